type Failure = {
  /** Where nothing but “not as it should be” is noted. */
  readonly bad: string
  /** By what the check showed. */
  readonly shown?: Readonly<Record<string, string>>
}

const nothing = 'It does not run at all.'

/** What a function that failed is for a buyer, by the id of the function: whole sentences. Judgement: as one says it, by the thing and not by the test. */
export const functionFailures: Readonly<Record<string, Failure>> = Object.freeze({
  float: { bad: 'The float sticks.' },
  'relief-valve': { bad: 'The relief valve does not close.' },
  cord: {
    bad: 'The flex is not sound.',
    shown: { crushed: 'The flex has a crushed or kinked spot.', cut: 'The flex is cut, taped, sticky or bare.' },
  },
  'cord-reel': {
    bad: 'The cord reel does not hold or does not wind in.',
    shown: { creeps: 'The cord does not stay out.', stays: 'The cord does not wind in fully.' },
  },
  casing: {
    bad: 'The casing is not closed.',
    shown: { missing: 'A cover or screws of the casing are missing.', gap: 'Live parts can be reached at the casing.' },
  },
  cracks: { bad: 'The casing is cracked.' },
  wheels: { bad: 'A wheel is jammed, split or missing.' },
  'handle-lock': { bad: 'The handle lock sticks or does not hold.' },
  'height-lever': { bad: 'The height does not stay as it is set.' },
  'bag-door': {
    bad: 'The bag door does not close tight.',
    shown: { gapes: 'The latch of the bag door does not hold.' },
  },
  bin: {
    bad: 'The bin is not right.',
    shown: { full: 'The bin is full.', cracked: 'The bin is cracked.', catch: 'The flap of the bin does not shut.' },
  },
  'bin-seal': { bad: 'A seal of the bin does not close tight.' },
  'drum-clamps': { bad: 'The clamps of the drum do not hold.' },
  'drum-seal': { bad: 'The seal of the drum leaks air.' },
  'outer-bag': { bad: 'The outer bag is torn or does not close.' },
  'hose-clear': { bad: 'The hose is blocked.' },
  'hose-whole': {
    bad: 'The hose is split.',
    shown: { cuff: 'The hose is split at a cuff.', middle: 'The hose has splits or holes along it.' },
  },
  'lower-hose': { bad: 'The lower hose is split or off.' },
  wand: { bad: 'The tube is cracked, loose or blocked.', shown: { blocked: 'Something is stuck in the tube.' } },
  'wand-contacts': {
    bad: 'The contacts at hose, tube and head are not sound.',
    shown: { burnt: 'A contact at hose, tube or head is burnt.', bare: 'A wire is bare at the hose.' },
  },
  'hose-grip': { bad: 'The handle of the hose is broken or loose.' },
  'floor-head': {
    bad: 'The floor head is not right.',
    shown: {
      stuck: 'The pedal of the floor head sticks.',
      worn: 'The floor head is worn down.',
      cracked: 'The neck of the floor head is cracked or loose.',
    },
  },
  tools: { bad: 'The tools are not all there, whole or clear.' },
  overload: {
    bad: 'The overload button had come out.',
    shown: { 'will-not-hold': 'The overload button does not stay in.' },
  },
  bristles: {
    bad: 'Bristles or sole plate are worn.',
    shown: { plate: 'The sole plate is worn or cracked.', short: 'The bristles are worn short.' },
  },
  'roll-by-hand': {
    bad: 'The brush roll does not turn as it should.',
    shown: {
      free: 'There is no belt on the brush roll.',
      drags: 'The brush roll drags or squeals.',
      locked: 'The brush roll does not turn: it is locked.',
    },
  },
  starts: {
    bad: 'It does not run as it should.',
    shown: {
      rough: 'It runs rough, loud or with sparks.',
      smokes: 'It smoked or smelt sharp as it ran.',
      hums: 'It hums and does not turn.',
      trips: 'It trips or blows the fuse.',
      dead: nothing,
    },
  },
  switch: { bad: 'The mains switch does not switch as it should.' },
  sound: {
    bad: 'It does not sound right.',
    shown: {
      whistle: 'It whistles or hisses.',
      high: 'It runs at a high pitch all the time.',
      rough: 'It crackles or buzzes as it runs.',
      rumble: 'It rumbles as it runs.',
      scream: 'It screams as it runs.',
      hums: 'It hums and does not turn.',
      dead: nothing,
    },
  },
  'cord-moved': { bad: 'It falters when the flex is moved.', shown: { dead: nothing } },
  speed: {
    bad: 'The speed control does not do what it should.',
    shown: { 'full-only': 'It runs at full speed only.', surges: 'Its speed surges or jumps.', dead: nothing },
  },
  lamps: { bad: 'A lamp does not light.', shown: { dead: nothing } },
  blockage: {
    bad: 'The blockage lamp or fill indicator does not show what it should.',
    shown: { dead: nothing },
  },
  suction: {
    bad: 'Its suction is not as it should be.',
    shown: { fair: 'It does not pull hard.', weak: 'It hardly pulls.', dead: nothing },
  },
  'suction-head': {
    bad: 'Its suction at the head is not as it should be.',
    shown: { fair: 'It does not pull hard at the head.', weak: 'It does not pull at the head.', dead: nothing },
  },
  changeover: { bad: 'Its air does not all go to the hose or the head as it should.' },
  brush: {
    bad: 'The brush roll does not turn as it should when it runs.',
    shown: {
      slow: 'The brush roll is slow, stalls or rattles.',
      whirrs: 'The brush roll does not turn; its turbine does.',
      still: 'The brush roll does not turn when it runs.',
      dead: nothing,
    },
  },
  'brush-stops': { bad: 'The brush does not stop and start as it should.' },
  'head-switch': { bad: 'The switch of the brush does not stop and start it each time.' },
  neck: {
    bad: 'The brush drops out when the neck is swung.',
    shown: { still: 'The brush roll does not turn when it runs.' },
  },
  'height-drive': {
    bad: 'The height drive does not do what it should.',
    shown: {
      hunts: 'The height drive hunts up and down.',
      stays: 'The height drive stays at one height.',
      ticks: 'The height drive ticks and does not move.',
      dead: nothing,
    },
  },
  everything: {
    bad: 'Not all of it does what it should.',
    shown: {
      smells: 'It smells as it runs.',
      leaks: 'Dust comes out of it.',
      'poor-pickup': 'It picks up poorly.',
      height: 'It is hard to push.',
      noisy: 'It is noisy.',
      weak: 'Its suction is weak.',
      'cuts-out': 'It cuts out or falters.',
      'runs-on': 'It does not switch off.',
      sparks: 'It sparks heavily or smells of burning.',
      trips: 'It trips or blows the fuse.',
      dead: nothing,
    },
  },
})
