/** Words of the checks step. */
export const checkWords = {
  'checks.one.error': 'Error',
  'checks.one.warning': 'Warning',
  'checks.one.note': 'Note',
  'checks.errors': 'To mend first',
  'checks.warnings': 'To look at',
  'checks.notes': 'Good to know',
  'checks.count.error': '{count} to mend',
  'checks.count.warning': '{count} to look at',
  'checks.count.note': '{count} good to know',
  'checks.lead': 'Click one to see where it is on the face.',
  'checks.rules': 'Rules that cannot hold',
  'checks.rulesLead':
    'Until one of them is let go, the parts stay where they last stood. Nothing is lost: undo brings a rule back.',
  'checks.dropOther': 'Let this one go: {rule}',
  'checks.fights': 'It fights',
  'checks.clear': 'Nothing to mend. What was looked at:',
  'checks.looked': 'What was looked at',
  'checks.did.parts':
    'Parts: {count}. On the face, held up, clear of each other and of keep-clears ({keeps})',
  'checks.did.rules': 'Rules that hold: {count}',
  'checks.did.pieces': 'Pieces: {count}. Every cut within the saw’s reach, every length within its stock',
  'checks.did.swing':
    'Every angle of the swing: {floor} to the floor, {wall} to the wall, {ceiling} to the ceiling at the tightest',
  'checks.did.load': '{added} added, {lift} more to lift at the far edge',
  'checks.did.brads': 'Brads and screws: {count}. Each stops short of the far side of the wood',
  'checks.did.letters': 'Signs: {count}. Every letter is in its font and on its board',
  'checks.did.paint': 'Finishes: {count}. Each has cans to come from',
};
