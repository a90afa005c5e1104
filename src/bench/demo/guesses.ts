import type { Guess } from '../adverts/advert-note.ts'

/**
 * What the program guessed of each advert of the year, with the settings of a new bench and a quick look ahead. Worked out and not typed:
 * `node scripts/write-demo-guesses.mjs` writes this file, and a test works some of them out again. Kept because working them all out
 * takes longer than whoever looks at the demonstration would wait.
 */
export const guesses: Readonly<Record<string, Guess>> = {
  'demo-y10.advert': {
    ceilingMinor: 3864,
    expectedMinor: 1564,
    spreadMinor: 3468,
    expectedMin: 241,
    lossChance: 0.4244,
    likely: [
      { fault: 'brushes-worn', probability: 0.1392 },
      { fault: 'switch-open', probability: 0.0662 },
      { fault: 'plug-fuse-open', probability: 0.0656 },
    ],
  },
  'demo-y16.advert': {
    ceilingMinor: 1280,
    expectedMinor: 80,
    spreadMinor: 2616,
    expectedMin: 199,
    lossChance: 0.5138,
    likely: [
      { fault: 'head-pedal-stuck', probability: 0.6086 },
      { fault: 'speed-triac-shorted', probability: 0.3257 },
      { fault: 'head-worn', probability: 0.3245 },
    ],
  },
  'demo-y20.advert': {
    ceilingMinor: -216,
    expectedMinor: -1415,
    spreadMinor: 1385,
    expectedMin: 124,
    lossChance: 0.8579,
    likely: [
      { fault: 'wand-blocked', probability: 0.1781 },
      { fault: 'head-neck-leaks', probability: 0.1506 },
      { fault: 'hose-split-cuff', probability: 0.1413 },
    ],
  },
  'demo-y24.advert': {
    ceilingMinor: -333,
    expectedMinor: -1333,
    spreadMinor: 1517,
    expectedMin: 128,
    lossChance: 0.8499,
    likely: [
      { fault: 'brushes-worn', probability: 0.1526 },
      { fault: 'switch-open', probability: 0.0681 },
      { fault: 'plug-fuse-open', probability: 0.0616 },
    ],
  },
  'demo-y30.advert': {
    ceilingMinor: 4022,
    expectedMinor: 3122,
    spreadMinor: 3587,
    expectedMin: 225,
    lossChance: 0.1879,
    likely: [
      { fault: 'pinched-wire-short', probability: 0.1152 },
      { fault: 'flex-short', probability: 0.0951 },
      { fault: 'capacitor-shorted', probability: 0.0639 },
    ],
  },
  'demo-y36.advert': {
    ceilingMinor: 3748,
    expectedMinor: 2649,
    spreadMinor: 4029,
    expectedMin: 274,
    lossChance: 0.2583,
    likely: [
      { fault: 'park-latch-broken', probability: 0.4113 },
      { fault: 'pre-motor-filter-clogged', probability: 0.1652 },
      { fault: 'park-switch-closed', probability: 0.1371 },
    ],
  },
  'demo-y40.advert': {
    ceilingMinor: -41,
    expectedMinor: -1140,
    spreadMinor: 1517,
    expectedMin: 118,
    lossChance: 0.8345,
    likely: [
      { fault: 'brushes-worn', probability: 0.1526 },
      { fault: 'switch-open', probability: 0.0681 },
      { fault: 'plug-fuse-open', probability: 0.0616 },
    ],
  },
  'demo-y42.advert': {
    ceilingMinor: 215,
    expectedMinor: -484,
    spreadMinor: 1000,
    expectedMin: 82,
    lossChance: 0.8156,
    likely: [
      { fault: 'lower-hose-split', probability: 0.2252 },
      { fault: 'bag-split', probability: 0.2107 },
      { fault: 'bag-full', probability: 0.1808 },
    ],
  },
  'demo-y50.advert': {
    ceilingMinor: 4253,
    expectedMinor: 2654,
    spreadMinor: 3468,
    expectedMin: 229,
    lossChance: 0.1811,
    likely: [
      { fault: 'brushes-worn', probability: 0.1392 },
      { fault: 'switch-open', probability: 0.0662 },
      { fault: 'plug-fuse-open', probability: 0.0656 },
    ],
  },
  'demo-y54.advert': {
    ceilingMinor: 3377,
    expectedMinor: 2377,
    spreadMinor: 3468,
    expectedMin: 257,
    lossChance: 0.3458,
    likely: [
      { fault: 'brushes-worn', probability: 0.1392 },
      { fault: 'switch-open', probability: 0.0662 },
      { fault: 'plug-fuse-open', probability: 0.0656 },
    ],
  },
  'demo-y58.advert': {
    ceilingMinor: 1042,
    expectedMinor: 442,
    spreadMinor: 2231,
    expectedMin: 204,
    lossChance: 0.5948,
    likely: [
      { fault: 'brushes-worn', probability: 0.1203 },
      { fault: 'speed-board-dead', probability: 0.07 },
      { fault: 'switch-linkage-broken', probability: 0.0686 },
    ],
  },
  'demo-advert-1': {
    ceilingMinor: 3795,
    expectedMinor: -705,
    spreadMinor: 4006,
    expectedMin: 246,
    lossChance: 0.4895,
    likely: [
      { fault: 'duct-blocked', probability: 0.4665 },
      { fault: 'pre-motor-filter-clogged', probability: 0.2315 },
      { fault: 'roll-jammed', probability: 0.1559 },
    ],
  },
  'demo-advert-2': {
    ceilingMinor: -1205,
    expectedMinor: -3705,
    spreadMinor: 0,
    expectedMin: 83,
    lossChance: 1,
    likely: [
      { fault: 'armature-shorted', probability: 0.3009 },
      { fault: 'pre-motor-filter-clogged', probability: 0.1808 },
      { fault: 'motor-seized', probability: 0.1687 },
    ],
  },
  'demo-advert-3': {
    ceilingMinor: 1139,
    expectedMinor: -860,
    spreadMinor: 2231,
    expectedMin: 201,
    lossChance: 0.7198,
    likely: [
      { fault: 'brushes-worn', probability: 0.1203 },
      { fault: 'speed-board-dead', probability: 0.07 },
      { fault: 'switch-linkage-broken', probability: 0.0686 },
    ],
  },
  'demo-advert-4': {
    ceilingMinor: 481,
    expectedMinor: -2019,
    spreadMinor: 1293,
    expectedMin: 100,
    lossChance: 0.9122,
    likely: [
      { fault: 'hose-split-cuff', probability: 0.2186 },
      { fault: 'hose-blocked', probability: 0.1996 },
      { fault: 'fan-choked', probability: 0.1224 },
    ],
  },
  'demo-advert-5': {
    ceilingMinor: 3460,
    expectedMinor: 2261,
    spreadMinor: 3536,
    expectedMin: 240,
    lossChance: 0.3059,
    likely: [
      { fault: 'roll-jammed', probability: 0.27 },
      { fault: 'roll-bearing-seized', probability: 0.1661 },
      { fault: 'brush-motor-seized', probability: 0.1473 },
    ],
  },
}
