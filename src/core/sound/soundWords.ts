import type { Tone } from './findTone.ts'
import type { SoundFacts } from './measureSound.ts'

/** A level with one decimal and its unit; silence in words. */
export const levelWords = (level: number, unit: string): string =>
  Number.isFinite(level) ? `${level.toFixed(1).replace('-', '−')} ${unit}` : 'silence'

/** Alignment levels that a tone is told against, in dBFS of a sine. */
const ALIGNMENTS: readonly { readonly level: number; readonly name: string }[] = [
  { level: -18, name: 'EBU R 68' },
  { level: -20, name: 'SMPTE RP 155 (from memory)' },
]

const toneWords = ({ at, seconds, hz, level }: Tone): string => {
  const against = ALIGNMENTS.map(({ level: aim, name }) => {
    const off = level - aim
    const words = Math.abs(off) < 0.05 ? 'at' : `${levelWords(off, 'dB')} from`
    return `${words} alignment by ${name}`
  })
  return `A tone of ${Math.round(hz)} Hz at ${levelWords(level, 'dBFS')}, from ${at.toFixed(1)} s for ${seconds.toFixed(1)} s: ${against.join('; ')}.`
}

/** EBU R 128 (2020): where a programme is to be, and how high it may peak. */
const TARGET = -23
const HIGHEST_PEAK = -1

/** What a track measures, a row each: what it is, and its value. */
export const soundRows = (
  facts: SoundFacts,
): readonly (readonly [what: string, value: string])[] => [
  ['Integrated loudness', levelWords(facts.integrated, 'LUFS')],
  ['Loudness range', `${facts.range.toFixed(1)} LU`],
  ['Loudest 400 ms', levelWords(facts.momentary, 'LUFS')],
  ['Loudest 3 s', levelWords(facts.shortTerm, 'LUFS')],
  ['True peak', levelWords(facts.truePeak, 'dBTP')],
  ['Highest sample', levelWords(facts.samplePeak, 'dBFS')],
]

/** What a track measures beside what is asked of a programme, in sentences. */
export const soundWords = ({
  integrated,
  truePeak,
  tone,
  channels,
}: SoundFacts): readonly string[] => {
  const off = integrated - TARGET
  return [
    ...(Number.isFinite(integrated)
      ? [
          Math.abs(off) < 0.05
            ? 'It is at the −23 LUFS of EBU R 128.'
            : `${levelWords(Math.abs(off), 'LU')} ${off > 0 ? 'above' : 'below'} the −23 LUFS of EBU R 128.`,
        ]
      : ['Nothing is heard in it.']),
    ...(truePeak > HIGHEST_PEAK ? ['Its true peak is above the −1 dBTP of EBU R 128.'] : []),
    ...(channels === 1
      ? ['One channel: played on two it is 3 LU louder than is measured here.']
      : []),
    tone ? toneWords(tone) : 'It has no steady tone for alignment.',
  ]
}
