/** One way to answer, as a person says it of the machine before them. */
export type SignAnswer = { readonly id: string; readonly name: string }

/** A question that is answered by looking at a machine, plug out, nothing opened. */
export type SignQuestion = {
  readonly id: string
  readonly question: string
  readonly answers: readonly SignAnswer[]
}

/** What tells architectures apart from outside, in the order a person takes a machine in. */
export const signQuestions = [
  {
    id: 'stands',
    question: 'How does it stand?',
    answers: [
      { id: 'upright', name: 'Upright: body and floor head in one, pushed by a handle' },
      { id: 'cylinder', name: 'Low on wheels, pulled along by its hose' },
      { id: 'drum', name: 'A drum with the motor on top' },
      { id: 'stick', name: 'A thin stick with a small body' },
    ],
  },
  {
    id: 'dust',
    question: 'Where does the dust go?',
    answers: [
      { id: 'bag', name: 'Into a bag inside the body' },
      { id: 'cloth-bag', name: 'Into a cloth bag that hangs outside' },
      { id: 'bin', name: 'Into a clear bin' },
    ],
  },
  {
    id: 'cord',
    question: 'Where does the flex go?',
    answers: [
      { id: 'reel', name: 'Winds itself in' },
      { id: 'hooks', name: 'Round hooks, by hand' },
    ],
  },
  {
    id: 'brush',
    question: 'What turns the brush in the head?',
    answers: [
      { id: 'belt', name: 'A belt from the motor that sucks' },
      { id: 'electric', name: 'A motor of its own: contacts at the wand, or the roll stops while suction goes on' },
      { id: 'air', name: 'The air that is sucked in' },
      { id: 'none', name: 'No roll: bristles or a plain head' },
    ],
  },
  {
    id: 'switch',
    question: 'Where is the switch?',
    answers: [
      { id: 'handle', name: 'On the handle' },
      { id: 'foot', name: 'On the body, for the foot' },
      { id: 'top', name: 'On top of the motor' },
    ],
  },
  {
    id: 'reset',
    question: 'Is there a button that resets an overload?',
    answers: [
      { id: 'yes', name: 'Yes, beside the motor, the neck or the head' },
      { id: 'no', name: 'None to be found' },
    ],
  },
] as const satisfies readonly SignQuestion[]

export type SignQuestionId = (typeof signQuestions)[number]['id']

/** Ids of the questions, for schemas. */
export const signQuestionIds = signQuestions.map(({ id }) => id)
