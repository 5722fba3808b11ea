/** Words of what is kept on the device, and of links. */
export const benchWords = {
  'earlier.open': 'Earlier versions',
  'earlier.title': 'Earlier versions of this design',
  'earlier.lead':
    'Saved on this device about every ten minutes of work. One that you open becomes a design of its own; this one stays as it is.',
  'earlier.none': 'None yet: the first is saved when you change a design that was saved before.',
  'earlier.name': '{name}, as of {time}',
  'offline.stored': 'Stored on this device: from now on it starts without a network.',
  'offline.ready': 'A newer version is ready. It waits until you use it; what is open stays saved.',
  'offline.overtaken':
    'A newer version is in use in another tab. This page goes on as it is; reload it when it suits you.',
  'offline.take': 'Update now',
  'offline.reload': 'Reload',
  'offline.broken':
    'A part of this page could not be loaded. Save your design to a file, then reload the page.',
  'bench.title': 'At the saw',
  'bench.openLong': 'One piece at a time, at the saw',
  'link.keptOld': 'Opened from a link: {name}. What this device had of it is saved as “{copy}”.',
  'link.broken': 'The link holds no whole design. Read the code again, or open a design file.',
  'link.copyName': '{name}, before the link',
  'link.merged': 'What is done on both devices put together',
  'link.unknown': 'This device does not have the design that the link is of: bring the design first.',
};
