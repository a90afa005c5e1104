import type { Complaint } from '../../facts/complaints.ts'

/** What invented sellers say of a machine that does this. */
export const sayings: Readonly<Record<Complaint, readonly [string, string]>> = {
  dead: [
    'Nothing at all when you press it, it was fine last week.',
    'Stopped half way up the stairs. Not a sound since.',
  ],
  intermittent: ['On and off by itself if you pull the lead about.', 'Works if I hold the cable just so.'],
  'cuts-out': ['Runs ten minutes, then has a rest.', 'Gets hot and stops, comes back after tea.'],
  'weak-suction': ['Lost its pull. Bag is new.', 'No suction to speak of any more.'],
  smell: ['Smells of burning after a minute, so I left it.', 'A hot smell, no smoke that I saw.'],
  noise: ['Screeches like a gull.', 'Very loud since the spring clean.'],
  'trips-supply': ['Bang, and the kitchen went off with it.', 'Takes the fuse with it each time.'],
  'brush-not-turning': ['Sucks well, the roller stands still.', 'The brush does not turn on carpet.'],
  'poor-pickup': ['It leaves bits behind.', 'Goes over the same fluff three times.'],
  sparks: ['Saw sparks at the back and pulled the plug.', 'A blue flash inside when it runs.'],
  'dust-leaks': ['Puffs dust out at the side.', 'More dust comes out than goes in.'],
  'hard-to-push': ['Heavy to push, like ploughing.', 'Sticks to the rug.'],
  'lamp-wrong': ['The light says full when it is empty.', 'Red light always on.'],
  'will-not-park': ['Falls over when you stand it up.', 'Does not lock upright any more.'],
  'will-not-switch-off': ['Goes on running until I pull the plug.', 'The switch does nothing, it just runs.'],
  'cord-stuck': ['The lead does not go back in.', 'Cable stays where it likes.'],
  'speed-wrong': ['One speed only, full tilt.', 'The slider does nothing.'],
}

/** Why machines of the demonstration came back, or were thrown away. */
export const cameBackWords = [
  'Buyer says it is no better than the old one; the bag was full to the neck after building work',
  'Buyer heard it rattle: a hair grip in the roll. Taken back all the same',
] as const
export const scrapWords = [
  'Plaster dust right through motor and bearings, casing cracked across. Nothing on it is worth taking off.',
  'Mice have lived in it. Bagged up and taken to the tip.',
  'Stood under a leaking roof: rust everywhere, plate unreadable.',
] as const
