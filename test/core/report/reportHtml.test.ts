import { describe, expect, it } from 'vitest'
import { gradeColour, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import type { Cue } from '../../../src/core/job/job.ts'
import type { ReelId } from '../../../src/core/job/recordIds.ts'
import { escapeHtml, html, written } from '../../../src/core/report/html.ts'
import { workedGrade } from '../../../src/core/report/methodSection.ts'
import { reportFrame } from '../../../src/core/report/reportFrame.ts'
import { reportHtml } from '../../../src/core/report/reportHtml.ts'
import { countText, isRounded, numberText } from '../../../src/core/report/reportWords.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { cueId, sampleJob, sampleReel } from '../../support/sampleJob.ts'
import { DOT, HOSTILE, hostileJob, reportFacts, reportPage } from '../../support/sampleReport.ts'

/** The words of a page, without its markup. */
const wordsOf = (page: string): string =>
  page
    .replace(/<style>.*?<\/style>/su, '')
    .replace(/<[^>]*>/gu, ' ')
    .replaceAll('&#39;', "'")
    .replace(/\s+/gu, ' ')

/** Between the heading of one section and the next. */
const section = (page: string, id: string): string =>
  wordsOf(new RegExp(`<h2 id="${id}">.*?</section>`, 'su').exec(page)?.[0] ?? '')

const cueBlock = (page: string, number: number): string =>
  wordsOf(
    new RegExp(`<article class="cue" aria-labelledby="cue-${number}">.*?</article>`, 'su').exec(
      page,
    )?.[0] ?? '',
  )

describe('markup', () => {
  it('takes text as text, in content and in attributes', () => {
    expect(html`<p title="${'"><b>'}">${'<i>&'}</p>`.html).toBe(
      '<p title="&quot;&gt;&lt;b&gt;">&lt;i&gt;&amp;</p>',
    )
    expect(
      html`<ul>${['a', 'b'].map((each) => html`<li>${each}</li>`)}${undefined}</ul>`.html,
    ).toBe('<ul><li>a</li><li>b</li></ul>')
  })

  it('writes what HTML cannot hold as U+FFFD, and keeps line breaks and tabs', () => {
    expect(escapeHtml('a\0b\u0085c\ud800d\ufffee')).toBe('a\ufffdb\ufffdc\ufffdd\ufffde')
    expect(escapeHtml('a\r\nb\rc\td')).toBe('a\nb\nc\td')
    expect(written('x').html).toBe('<bdi class="written">x</bdi>')
  })
})

describe('numbers of a report', () => {
  it('have at most six decimals and a true minus sign, and it is told where digits are lost', () => {
    expect([1.5, -0.25, 1 / 3, -1e-9, 1e6].map(numberText)).toEqual([
      ...['1.5', '−0.25', '0.333333', '0', '1000000'],
    ])
    expect([1.5, 1 / 3].map(isRounded)).toEqual([false, true])
    expect([999, 1000, 1234567].map(countText)).toEqual(['999', '1,000', '1,234,567'])
  })
})

describe('the frame a cue is shown by', () => {
  const cue = (first: number, ramp: number): Cue => {
    const made = sampleJob([0, first]).cues[cueId(2)]
    if (!made) throw new Error('no cue')
    return { ...made, ramp }
  }
  it('is the middle one past its ramp, and always one of its own', () => {
    const before = cue(50, 0)
    expect(reportFrame(cue(100, 0), before, frame(110))).toBe(104)
    expect(reportFrame(cue(100, 6), before, frame(110))).toBe(107)
    expect(reportFrame(cue(100, 6), undefined, frame(110))).toBe(104)
    expect(reportFrame(cue(100, 30), before, frame(110))).toBe(109)
    expect(reportFrame(cue(100, 0), before, frame(101))).toBe(100)
  })
})

describe('a report', () => {
  it('says how the reel stands', () => {
    const words = section(reportPage(), 'stands')
    expect(words).toContain('4 cues on 1,000 frames, 40.0 s.')
    for (const each of ['Inside the tolerance 1', 'Outside the tolerance 2', 'Not measured 1'])
      expect(words).toContain(each)
    for (const each of ['Agreed 0', 'Open 2', 'Changes asked 1', 'Changed since agreed 1'])
      expect(words).toContain(each)
  })

  it('has the particulars of the scan, who stated its coding, and its checksum', () => {
    const words = section(reportPage(), 'scan')
    expect(words).toContain('Length 1,000 frames, 25 ft 00 fr')
    expect(words).toContain('Luma equation BT.709; the file states it')
    expect(words).toContain(`SHA-256 ${'ab'.repeat(32)}`)
    const { media } = sampleReel()
    const byHand = sampleReel({ media: { ...media, rangeBy: 'person', layout: 'rgb' } })
    const job = { ...sampleJob(), reels: { [byHand.id]: byHand } }
    const other = section(reportPage(reportFacts(job, { scan: undefined })), 'scan')
    expect(other).toContain('codes 64 and 940); stated by hand')
    expect(other).not.toContain('Luma equation')
    expect(other).toContain('SHA-256 not worked out for this report')
    const sequence = reportFacts(job, { scan: { sha256: 'ef'.repeat(32), files: 1000 } })
    expect(section(reportPage(sequence), 'scan')).toContain('of its 1,000 files')
  })

  it('has the numbers of the base and what they mean', () => {
    const base = {
      ...PRINT_BASE,
      scan: 'negative' as const,
      clear: [0.2, 0.5, 0.7] as const,
      dyes: [
        [1.2, 0, 0],
        [0, 1, -0.1],
        [0, 0, 1],
      ] as const,
      list: {
        name: 'look',
        steps: [{ kind: 'cube', interpolation: 'trilinear', points: 17, values: [] }],
      },
    } as const
    const job = { ...sampleJob(), reels: { [sampleReel().id]: sampleReel({ base }) } }
    const words = section(reportPage(reportFacts(job)), 'base')
    expect(words).toContain('a negative as it lies')
    expect(words).toContain('Density of clear film 0.2 0.5 0.7')
    expect(words).toContain('G is 0 1 −0.1')
    expect(words).toContain('look : cube of 17³ places')
    expect(section(reportPage(), 'base')).toContain('The base changes nothing.')
  })

  it('has the limits of the tolerance, their source, and a verdict a cue', () => {
    const page = reportPage()
    const words = section(page, 'tolerance')
    expect(words).toContain('EBU R 103 v3.0 (May 2020)')
    // EBU R 103 v3.0: preferred range 20…984 of 10-bit codes.
    expect(words).toContain('Y′ −5.02 % 105.02 % 20 to 984')
    expect(words).toContain('Luma plus chroma not limited')
    expect(section(page, 'cues')).toContain(
      ' 1 10:00:00:00 10:00:04:00 4.0 s 0 ft 00 fr ● inside 0 % ○ open',
    )
    const verdicts = ['● inside', '▲ over', '◆ over and under', '◌ not measured']
    for (const [index, each] of verdicts.entries())
      expect(cueBlock(page, index + 1)).toContain(`Tolerance ${each}`)
    expect(cueBlock(page, 1)).toContain('0 of 100 frames outside; nothing out on any; levels R')
    expect(cueBlock(page, 2)).toContain('worst 10:00:00:07 with 3.5 % of its area out')
  })

  it('has every cue with its places, all its numbers and its words', () => {
    const words = cueBlock(reportPage(), 2)
    expect(words).toContain('Cue 2 10:00:04:00 to 10:00:10:00')
    expect(words).toContain('6.0 s, 150 frames from frame 100, 2 ft 20 fr')
    expect(words).toContain('Lift 0.01 0 −0.02 Gamma 1.25 1 0.8 Gain 1.1 1 0.9')
    expect(words).toContain('Saturation 1.5')
    expect(words).toContain(
      'zoom 1.2, pan 5 %, tilt −10 %, rotation 2.5°, squeeze 2, blanking 25 %',
    )
    expect(words).toContain('over 12 frames, eased; dissolve, 62 % sure')
    expect(words).toContain('Scene quay')
    expect(words).toContain('cold : lift 0 0 0, gamma 1 1 1, gain 1 1 1, saturation 1')
    expect(words).toContain('Note Two lines')
  })

  it('shows each cue as scanned and as graded, and says which have no picture', () => {
    const page = reportPage()
    expect(page).toContain(`<img src="${DOT}" alt="Cue 1 at 10:00:01:15 as scanned">`)
    expect(page.match(/<img /gu)).toHaveLength(7)
    expect(section(page, 'sheet')).toContain('3 of 4 cues have pictures; the frames of the others')
    const without = reportPage(reportFacts(sampleJob(), { cues: new Map(), held: new Map() }))
    expect(without).not.toContain('<img')
    expect(section(without, 'sheet')).toContain('There are no pictures')
  })

  it('says that only the first thousand cues have pictures where there are more', () => {
    const job = sampleJob(
      Array.from({ length: 1001 }, (_, i) => i),
      undefined,
      sampleReel({ frames: 1001 }),
    )
    const pictures = { frame: frame(0), scanned: DOT, graded: DOT }
    const cues = Object.values<Cue>(job.cues).slice(0, 1000)
    const known = new Map(cues.map(({ id }) => [id, { pictures, verdict: undefined }]))
    const words = section(reportPage(reportFacts(job, { cues: known })), 'sheet')
    expect(words).toContain('1,000 of 1,001 cues have pictures, the most a report holds.')
  })

  it('says how to repeat a grade and works one out, as the grade itself does', () => {
    const words = section(reportPage(), 'method')
    expect(words).toContain('Cue 2, worked out')
    const grade = Object.values<Cue>(reportFacts().job.cues)[1]?.grade ?? IDENTITY_GRADE
    const { line, curved, luma, graded, codes } = workedGrade(grade, [0.5, 0.4, 0.3])
    expect(graded).toEqual(gradeColour([0.5, 0.4, 0.3], grade))
    // By hand and with Python: R: v = 0.01 + 1.09 · 0.5 = 0.555, y = v^(1/1.25); G as it is; B: v = 0.256.
    expect(line).toEqual([0.555, 0.4, expect.closeTo(0.256, 12)])
    expect(curved[0]).toBeCloseTo(0.624359, 6)
    expect(luma).toBeCloseTo(0.2126 * 0.624359 + 0.7152 * 0.4 + 0.0722 * 0.256 ** 1.25, 6)
    for (const each of [...line, ...curved, luma, ...graded])
      expect(words).toContain(numberText(each))
    for (const code of codes) expect(words).toContain(` ${code} `)
    expect(words).toContain('Slope 1.09 1 0.92 Offset 0.01 0 −0.02 Power 0.8 1 1.25')
  })

  it('tells of rounding only where numbers are rounded', () => {
    const words = 'rounded to six decimals'
    expect(reportPage()).not.toContain(words)
    const third = sampleJob([0], (cue) => ({ ...cue, grade: { ...cue.grade, saturation: 1 / 3 } }))
    expect(reportPage(reportFacts(third))).toContain(words)
  })

  it('names the lists with their checksums and losses, held frames, and cautions', () => {
    const page = reportPage()
    expect(section(page, 'files')).toContain(`orlop.csv A list ${'cd'.repeat(32)}`)
    expect(section(page, 'files')).toContain('Framing: The framing of cue 2. Left.')
    expect(section(page, 'held')).toContain('The quay 10:00:12:00')
    const cautions = section(page, 'cautions')
    for (const each of ['approved test', 'graded monitor', 'nitrate', 'lamps', 'solvents', 'flash'])
      expect(cautions).toContain(each)
    const bare = reportPage(reportFacts(sampleJob(), { lists: [], held: new Map() }))
    expect(bare).not.toMatch(/id="(files|held)"/u)
    expect(bare).not.toMatch(/href="#(files|held)"/u)
  })

  it('tells every pass: settings, output, findings, reasons, frames held', () => {
    const told = section(reportPage(), 'passes')
    for (const words of [
      'DPX, 10 bits; limited softly to the tolerance; nothing burnt in; no head',
      '500 frames in 500 files, 4,147,200,000 bytes',
      'a'.repeat(64),
      '▲ tolerance, wrong: 3 of 500 frames are outside.',
      'It was lined up for the reel before.',
      'frames that could not be decoded show the one before: 17',
    ])
      expect(told).toContain(words)
    expect(reportPage(reportFacts(sampleJob()))).not.toMatch(/(id="|#)passes"/u)
  })

  it('holds nothing that runs or is fetched, whatever names and notes say', () => {
    const page = reportPage(reportFacts(hostileJob()))
    expect(page).not.toMatch(/<script|<iframe|<link|<img src=x|@import|url\(/iu)
    expect(page.match(/<title>/gu)).toHaveLength(1)
    for (const [, address] of page.matchAll(/(?:src|href)="([^"]*)"/gu))
      expect(address).toMatch(/^(data:image\/png;base64,|#)/u)
    expect(page).not.toContain('\0')
    expect(page).toContain('&lt;script&gt;alert(&quot;x&quot;)')
    expect(page.split(escapeHtml(HOSTILE)).length).toBeGreaterThan(20)
  })

  it('is refused for a reel or a tolerance that is not there', () => {
    expect(reportHtml(reportFacts(sampleJob(), { reelId: 'none' as ReelId }))).toMatchObject({
      problems: [{ code: 'not-found' }],
    })
    const job = sampleJob()
    const info = { job: { ...job.info.job, tolerance: 'none' } }
    expect(reportHtml(reportFacts({ ...job, info }))).toMatchObject({
      problems: [{ code: 'not-found' }],
    })
  })
})
