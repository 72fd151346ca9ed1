import { packet, print, TREATED } from '../builders/packets.ts'

// npm run bench:labels: a thousand packet labels of as many lots, one in nine with a caution, printed as one document.

const LABELS = 1_000

const labels = Array.from({ length: LABELS }, (_, index) =>
  packet({
    lotNumber: `HL26-${1000 + index}-A`,
    variety: `Painted Quill no. ${index}`,
    cautions: index % 9 ? [] : [TREATED],
  }),
)
for (const turn of ['first', 'second']) {
  const [start, cpu] = [performance.now(), process.cpuUsage()]
  const { bytes, pages } = await print(labels)
  const { user, system } = process.cpuUsage(cpu)
  console.log(
    `${turn} time: ${LABELS} labels on ${pages} pages, ${Math.round(bytes.length / 1024)} KiB, in ` +
      `${((performance.now() - start) / 1000).toFixed(1)} s, ${((user + system) / 1_000_000).toFixed(1)} s of processor`,
  )
}
