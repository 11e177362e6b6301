import type { Answer } from '../core/agreement/answer.ts'
import type { AnswerFile } from '../core/agreement/answerFile.ts'
import { answerText } from '../core/agreement/answerText.ts'
import type { PackContents, PackCue } from '../core/agreement/pack/packContents.ts'
import { signText } from '../core/agreement/signing.ts'
import type { GivenAnswer } from '../core/job/commands/addAnswers.ts'
import { type CueDraft, type Draft, draftOf } from './draft.ts'

/** Half a character, which a paste can leave, is none that can be signed or read again. */
const whole = (text: string): string => text.trim().replace(/[\ud800-\udfff]/gu, '\ufffd')

const answerTo = (
  contents: PackContents,
  cue: PackCue,
  by: string,
  { says, note, marks, alternate, at }: CueDraft & { says: 'agreed' | 'asked' },
): Answer => {
  const preferred = cue.alternates.find(({ name }) => name === alternate)
  return {
    ...{ says, by, at, note: whole(note), marks, frame: marks.length > 0 ? cue.frame : null },
    alternate: preferred?.name ?? null,
    look: preferred ? { ...cue.look, grade: preferred.grade } : cue.look,
    sha256: preferred?.sha256 ?? cue.sha256,
    ...{ pack: contents.id, signature: null },
  }
}

const signed = async (
  { key }: PackContents,
  { cue, answer }: GivenAnswer,
): Promise<GivenAnswer> => {
  const text = answerText(cue, answer)
  const signature = key && text.ok ? await signText(key, text.value) : undefined
  return { cue, answer: { ...answer, signature: signature ?? null } }
}

/** What is sent back: an answer to every cue of which something was said, signed where it can be. */
export const answerFileOf = async (contents: PackContents, draft: Draft): Promise<AnswerFile> => {
  const by = whole(draft.name)
  const given = contents.cues.flatMap((cue): readonly GivenAnswer[] => {
    const { says, ...said } = draftOf(draft, cue.cue)
    return says ? [{ cue: cue.cue, answer: answerTo(contents, cue, by, { ...said, says }) }] : []
  })
  const { id: pack, title, reel } = contents
  const answers = await Promise.all(given.map((each) => signed(contents, each)))
  return { format: 'reelwright-answer', version: 1, pack, title, reel, answers }
}
