import type { Source } from '../base/source.ts'

export const safetyStepIds = ['visual', 'earth-continuity', 'insulation', 'leakage', 'polarity', 'run'] as const
export type SafetyStepId = (typeof safetyStepIds)[number]

/** One check after repair: what to do, what to look out for. What depends on region, class and mass is put in by the engine. */
export type SafetyStepText = {
  readonly id: SafetyStepId
  readonly title: string
  /** Whether the plug must be out and in sight. */
  readonly plugOut: boolean
  readonly how: readonly string[]
  readonly cautions: readonly string[]
  readonly source: Source
}

const order: Source = {
  title: 'Order of tests: look, protective conductor, insulation, leakage; function and record last',
  url: 'https://www.manualslib.de/manual/255662/Fluke-6200.html?page=43',
  evidence: 'retrieved',
}
const switchOn: Source = {
  title: 'Appliance switch on while testing; no insulation test where the earth has failed',
  url: 'https://rfillumination.com/news-insulation-resistance-test-pat-testing-course-blog.html',
  evidence: 'retrieved',
}
const dead: Source = {
  title: 'HSE EIS35, repairs with the appliance isolated',
  url: 'https://www.scribd.com/document/613136364/eis35-electrical-testing-of-equipment',
  evidence: 'retrieved',
}

export const waitForCapacitor =
  'Plug out, then wait ten seconds. A capacitor may still hold charge where its bleed resistor has failed: look at the pins with a meter on DC volts before you touch them.'

export const sharpEdges = 'Wait until the fan stands still. Sheet metal and impeller have sharp edges.'

/** The checks in their order. */
export const safetySteps: readonly SafetyStepText[] = Object.freeze([
  {
    id: 'visual',
    title: 'Look it over',
    plugOut: true,
    how: [
      'Run the whole lead through your fingers: cuts, flats, hard or sticky places, tape, joints.',
      'Look at the plug: cracks, scorching, bent pins, loose screws, sleeves on the pins where the region has them.',
      'Look at the casing: no crack or hole a finger could reach live parts through; all screws in; nothing loose inside.',
      'Look at switch and plate: the switch clicks cleanly, the plate can be read.',
    ],
    cautions: [waitForCapacitor, sharpEdges],
    source: dead,
  },
  {
    id: 'earth-continuity',
    title: 'Protective conductor',
    plugOut: true,
    how: [
      'Short the test leads and null them.',
      'One lead to the earth pin of the plug, the other to bare metal of the machine, paint and dirt scratched away.',
      'Move the lead along its whole length meanwhile: a figure that jumps is a broken conductor.',
      'Do this for each metal part that can be touched.',
    ],
    cautions: ['If the earth fails, stop here and mend it. Do not go on to insulation.'],
    source: switchOn,
  },
  {
    id: 'insulation',
    title: 'Insulation',
    plugOut: true,
    how: [
      'Switch of the machine on.',
      'Join line and neutral pins; test from them to the earth pin (class I) and to each metal part that can be touched.',
      'Read when the figure has settled.',
    ],
    cautions: [
      'The tester puts hundreds of volts on the pins: hands off, nobody else near, let it discharge afterwards.',
      'Not with a multimeter: on ohms it tests at about a volt and finds nothing that breaks down at mains voltage.',
    ],
    source: switchOn,
  },
  {
    id: 'leakage',
    title: 'Leakage current',
    plugOut: false,
    how: [
      'Only with an instrument made for it. The machine’s plug goes into the instrument; the probe is on the metal before anything is switched on.',
      'Switch on, hands off, read; switch off. Then each further metal part.',
      'Do it with the plug both ways round where it fits both ways.',
    ],
    cautions: [
      'Only after the dead checks have passed. Behind an RCD of 30 mA or less.',
      'Never hold a probe on a machine that is switched on. Without such an instrument leave this to someone who has one.',
    ],
    source: order,
  },
  {
    id: 'polarity',
    title: 'Polarity',
    plugOut: true,
    how: [
      'Meter on ohms, switch of the machine off.',
      'Line to neutral then shows open; a capacitor that charges, or a bleed resistor of 100 kΩ to 2 MΩ, is no fault. Below 1 kΩ is one.',
    ],
    cautions: [waitForCapacitor],
    source: {
      title: 'Single-pole switches and fuses only in the line conductor',
      url: 'https://zdroje.elektrika.cz/book/basic-electrical-installation-work/page/367',
      evidence: 'retrieved',
    },
  },
  {
    id: 'run',
    title: 'Run',
    plugOut: false,
    how: [
      'Cover on, hose clear, behind an RCD of 30 mA or less.',
      'Ten seconds first, then two to five minutes. Note watts and amperes at the plug, sound, smell, sparks, warmth of the lead.',
    ],
    cautions: [
      'Only after all checks before have passed.',
      'If it hums and does not turn, unplug at once: the fuse may hold for minutes.',
      'Stop for smoke, a burnt smell, heavy sparking, a hot lead, a tripped RCD, or more than 15 % above the plate.',
    ],
    source: {
      title: 'First power-up behind an RCD; function and record last',
      url: 'https://zdroje.elektrika.cz/book/benning-produkty/page/195',
      evidence: 'retrieved',
    },
  },
])

/** Where an insulation test does not reach, or does harm. */
export const insulationReach = {
  electronicSwitch: {
    title: 'An electronic switch or relay keeps the test from the motor: leakage instead',
    url: 'https://www.etatraining.com.au/training-articles/insulation-test-vs-leakage-current-test-whats-the-difference-and-when-should-you-use-each',
    evidence: 'retrieved',
  } as Source,
  surgeSuppressor: {
    title: 'EN 50699, 5.4: not below 500 V, but 250 V with built-in surge suppressors',
    url: 'https://scribd.com/document/741268328/BS-EN-50699-032413',
    evidence: 'retrieved',
  } as Source,
  suppressorTestV: 250,
} as const
