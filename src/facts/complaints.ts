/** What owners and sellers complain of, in the trade's words. Several can hold at once. */
export const complaints = {
  dead: 'Dead: nothing happens at all',
  intermittent: 'Comes and goes with movement',
  'cuts-out': 'Cuts out after a while, comes back',
  'weak-suction': 'Weak suction',
  smell: 'Smell of burning or smoke',
  noise: 'Loud or strange noise',
  'trips-supply': 'Trips the supply or blows the fuse',
  'brush-not-turning': 'Brush does not turn',
  'poor-pickup': 'Suction is there but it does not pick up',
  sparks: 'Sparks seen',
  'dust-leaks': 'Dust comes out',
  'hard-to-push': 'Hard to push, or height is wrong',
  'lamp-wrong': 'A lamp shows what is not so',
  'will-not-park': 'Does not stop or lock when upright',
  'will-not-switch-off': 'Does not switch off',
  'cord-stuck': 'The flex does not wind in, or does not stay out',
  'speed-wrong': 'Speed cannot be set',
} as const

export type Complaint = keyof typeof complaints
export const complaintIds = Object.keys(complaints) as [Complaint, ...Complaint[]]
