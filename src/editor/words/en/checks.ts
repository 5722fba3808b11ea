/** Words of the checks step. */
export const checkWords = {
  'checks.errors': 'To mend first',
  'checks.warnings': 'To look at',
  'checks.notes': 'Good to know',
  'checks.count.error': '{count} to mend',
  'checks.count.warning': '{count} to look at',
  'checks.count.note': '{count} good to know',
  'checks.lead': 'Click one to see where it is on the face.',
  'checks.place': '{message} Show it on the face.',
  'checks.rules': 'Rules that cannot hold',
  'checks.rulesLead':
    'Until one of them is let go, the parts stay where they last stood. Nothing is lost: undo brings a rule back.',
  'checks.dropRule': 'Let go of this rule',
  'checks.dropOther': 'Let this one go: {rule}',
  'checks.fights': 'It fights',
  'checks.clear': 'Nothing to mend. What was looked at:',
  'checks.looked': 'What was looked at',
  'checks.did.parts': '{count} parts: on the face, held up, clear of each other and of {keeps} keep-clears',
  'checks.did.rules': '{count} rules hold',
  'checks.did.pieces': '{count} pieces: every cut within the saw’s reach, every length within its stock',
  'checks.did.swing':
    'Every angle of the swing: {floor} to the floor, {wall} to the wall, {ceiling} to the ceiling at the tightest',
  'checks.did.load': '{added} added, {lift} more to lift at the far edge',
  'checks.did.brads': '{count} brads and screws stop short of the far side of the wood',
  'checks.did.letters': '{count} signs: every letter is in its font and on its board',
  'checks.did.paint': '{count} finishes have cans to come from',
};
