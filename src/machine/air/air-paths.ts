import type { AirEffect, AirSection, AirWay } from '../../blueprint/air-schema.ts'
import type { Blueprint } from '../../blueprint/schema.ts'

/** The room, as the airflow engine calls it. */
export const room = 'room'

/** A part that the air loses pressure in or is drawn by, and the places on both sides of it. */
export type PathSection = {
  readonly part: string
  readonly name: string
  readonly section: AirSection
  readonly from: string
  readonly to: string
}

/** A way in: where its rig sits, and the parts the air goes through from there. */
export type PathOfWay = { readonly way: AirWay; readonly node: string; readonly parts: readonly string[] }

/** The air path as places and what lies between them. A place is named after the part that comes next. */
export type AirPaths = {
  readonly sections: readonly PathSection[]
  readonly ways: readonly PathOfWay[]
  /** Where an effect of a fault lets air in; null where no way leads past it. */
  readonly placeOf: (effect: Extract<AirEffect, { side: unknown }>) => string | null
}

/** The paths of a blueprint's ways in. Where ways run together, their sections are the same. */
export const airPathsOf = (blueprint: Blueprint): AirPaths => {
  const { airPath } = blueprint
  const partOf = (id: string) => blueprint.parts.find((part) => part.id === id)
  const sectionOf = (id: string): AirSection | undefined => partOf(id)?.air
  const sequences = blueprint.airWays.map((way) => ({ way, parts: partsOfWay(airPath, way) }))
  /** The place before the next part that the air loses something in. */
  const placeIn = (parts: readonly string[], from: number): string => {
    const next = parts.slice(from).find((id) => sectionOf(id) !== undefined)
    return next === undefined ? room : `before ${next}`
  }
  const sections = new Map<string, PathSection>()
  for (const { parts } of sequences) {
    parts.forEach((id, at) => {
      const section = sectionOf(id)
      if (section === undefined || sections.has(id)) return
      const name = partOf(id)?.name ?? id
      sections.set(id, { part: id, name, section, from: `before ${id}`, to: placeIn(parts, at + 1) })
    })
  }
  return {
    sections: [...sections.values()],
    ways: sequences.map(({ way, parts }) => ({ way, parts, node: placeIn(parts, 0) })),
    placeOf: ({ part, side }) => {
      const step = side === 'after' ? 1 : 0
      const own = sequences.find(({ parts }) => parts.includes(part))?.parts
      if (own !== undefined) return inside(placeIn(own, own.indexOf(part) + step))
      // A part that no way goes through, such as a flap: where all ways meet after it.
      const shared = airPath
        .slice(airPath.indexOf(part) + 1)
        .filter((id) => sequences.every(({ parts }) => parts.includes(id)))
      return shared.length === 0 ? null : inside(placeIn(shared, 0))
    },
  }
}

const inside = (place: string): string | null => (place === room ? null : place)

const partsOfWay = (airPath: readonly string[], { from, past }: AirWay): readonly string[] => {
  const start = airPath.indexOf(from)
  return start < 0 ? [] : airPath.slice(start).filter((id) => !past.includes(id))
}
