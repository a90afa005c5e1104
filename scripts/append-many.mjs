// One of several programs that write to the same machine: adds notes to it until so many of its own are kept. Run with the built program:
// node append-many.mjs ADDRESS NAME COUNT
import { openStore } from '../dist/store/postgres/open-store.js'

const [address, name, count] = process.argv.slice(2)
const opened = await openStore({ url: address })
if (opened.kind === 'refused') throw new Error(opened.problems.map(({ what }) => what).join('; '))
const { notes, close } = opened.value
let conflicts = 0
for (let own = 0; own < Number(count);) {
  const version = (await notes.notes('m1')).length
  const note = { id: `${name}-${own}`, machine: 'm1', seq: version + 1, at: '2026-03-14T12:00:00.000Z', content: { kind: 'said', text: name } } // prettier-ignore
  const outcome = await notes.append('m1', version, [note])
  if (outcome.kind === 'appended') own++
  else if (outcome.kind === 'conflict') conflicts++
  else throw new Error(outcome.kind)
}
await close()
console.log(conflicts)
