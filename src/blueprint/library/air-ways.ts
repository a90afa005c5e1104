import type { BlueprintInput } from '../schema.ts'

type Ways = NonNullable<BlueprintInput['airWays']>

/** The end of the hose, as on anything that is pulled by one. `holdsDust`: the part the hose leads to. */
export const waysByHose = (holdsDust: string): Ways => [
  {
    id: 'hose-end',
    name: 'End of the hose',
    how: 'Wand and head off, the slider on the handle shut. The rig goes on the hose’s end.',
    from: 'hose',
  },
  {
    id: 'inlet',
    name: 'Inlet of the body',
    how: 'Hose off. The rig goes on the hole where the hose plugs in.',
    from: holdsDust,
  },
]

/** An upright with a hose and a flap that sends the air by hose or by floor. */
export const waysOfUpright = (holdsDust: string): Ways => [
  {
    id: 'hose-end',
    name: 'End of the hose',
    how: 'Handle upright and the hose pulled out, so that the flap gives it the air. The rig goes on the hose’s end.',
    from: 'hose',
  },
  {
    id: 'inlet',
    name: 'Inlet of the body',
    how: 'Hose off at the body, handle upright. The rig goes on the hole the hose came from.',
    from: holdsDust,
  },
  neckWay(['changeover-flap', 'hose']),
]

/** The neck of a machine whose head comes off. `past`: what the air does not go through from there. */
export const neckWay = (past: string[] = []): Ways[number] => ({
  id: 'neck',
  name: 'Neck, head off',
  how: 'Plug out, head off at its neck, handle leant back as in use. The rig goes on the short hose of the neck.',
  from: 'lower-hose',
  past,
})

/** The body of a machine without a hose, its ducts left out. */
export const bodyWay = (holdsDust: string): Ways[number] => ({
  id: 'inlet',
  name: 'Inlet of the dust chamber',
  how: 'Plug out, the duct off where it joins the body. The rig goes on that hole.',
  from: holdsDust,
})

/** The floor opening of a machine whose fan comes first. */
export const waysAtFan: Ways = [
  {
    id: 'floor-opening',
    name: 'Opening to the floor',
    how: 'Plug out, belt off so that the brush stands still, machine on its back. The rig’s flange covers the whole floor opening, on a flat seal.',
    from: 'dirt-fan',
  },
]
