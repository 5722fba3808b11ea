/** Words of corners that are set one by one. */
export const cornerWords = {
  'tool.path': 'Draw a trim path, corner by corner',
  'tool.short.path': 'Path',
  'corners.title': 'Corners',
  'corners.hint':
    'Measured from the lower left of the part’s box. On the drawing, drag a corner, or a plus to add one.',
  'corners.number': 'Corner',
  'corners.left': 'From the left',
  'corners.bottom': 'From the bottom',
  'corners.leftOf': 'Corner {number}, from the left',
  'corners.bottomOf': 'Corner {number}, from the bottom',
  'corners.add': 'Add a corner after corner {number}',
  'corners.remove': 'Delete corner {number}',
  'corners.closed': 'Closed: the last corner runs to the first',
  'did.corner': 'Moved corner {number} of {name}',
  'did.addCorner': 'Added corner {number} of {name}',
  'did.dropCorner': 'Deleted corner {number} of {name}',
  'say.corner': 'Corner {number} is set. Enter ends the path; a click on the first corner closes it.',
  'say.leastCorners': 'At least {count} corners are needed.',
};
