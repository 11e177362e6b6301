import { useState } from 'react'
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import type { MatrixName, RangeName } from '../../core/picture/planes.ts'
import { type Rate, rate, sameRate } from '../../core/time/rate.ts'
import type { CodingAnswer, CodingQuestion } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'
import { STRINGS } from '../strings.ts'

const RATES: readonly Rate[] = [
  rate(25),
  rate(24),
  rate(24000, 1001),
  rate(50),
  rate(30000, 1001),
  rate(30),
  rate(18),
  rate(16),
  rate(50, 3),
]

const rateText = ({ num, den }: Rate): string =>
  den === 1 ? `${num}` : `${(num / den).toFixed(3)} (${num}/${den})`

/** The likely answer first, the others after it. */
const likelyFirst = <Value,>(
  values: readonly Value[],
  likely: Value,
  isSame: (a: Value, b: Value) => boolean = (a, b) => a === b,
): readonly Value[] => [likely, ...values.filter((value) => !isSame(value, likely))]

/** Asks what the file leaves open. The answer is kept in the job. */
export const CodingDialog = () => {
  const question = useAppState((state) => state.question)
  const { services } = useApp()
  return (
    <ModalOverlay
      className="overlay"
      isOpen={question !== undefined}
      onOpenChange={(isOpen) => {
        if (!isOpen) services.answerQuestion(undefined)
      }}
    >
      <Modal className="modal">
        <Dialog>{question && <CodingForm question={question} />}</Dialog>
      </Modal>
    </ModalOverlay>
  )
}

const CodingForm = ({ question }: { question: CodingQuestion }) => {
  const { services } = useApp()
  const [answer, setAnswer] = useState<CodingAnswer>(question.likely)
  const { likely } = question
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        services.answerQuestion(answer)
      }}
    >
      <Heading slot="title">What the file does not state</Heading>
      <p>
        <b>{question.name}</b> ({question.picture}) leaves this open. The likely answer comes first;
        it is kept in the job and can be changed under Prepare.
      </p>
      {question.asksRate && (
        <Choice
          label="Frames per second"
          options={likelyFirst(RATES, likely.rate, sameRate).map((value) => ({
            id: `${value.num}/${value.den}`,
            label: rateText(value),
          }))}
          value={`${answer.rate.num}/${answer.rate.den}`}
          onChange={(id) => {
            const [num = 25, den = 1] = id.split('/').map(Number)
            setAnswer({ ...answer, rate: rate(num, den) })
          }}
        />
      )}
      {question.asksMatrix && (
        <Choice
          label="Luma equation"
          options={likelyFirst<MatrixName>(['bt709', 'bt601', 'bt2020'], likely.matrix).map(
            (id) => ({
              id,
              label: STRINGS.matrices[id],
            }),
          )}
          value={answer.matrix}
          onChange={(id) => setAnswer({ ...answer, matrix: id as MatrixName })}
        />
      )}
      {question.asksRange && (
        <Choice
          label="Range of codes"
          options={likelyFirst<RangeName>(['narrow', 'full'], likely.range).map((id) => ({
            id,
            label: STRINGS.ranges[id],
          }))}
          value={answer.range}
          onChange={(id) => setAnswer({ ...answer, range: id as RangeName })}
        />
      )}
      <div className="dialog-buttons">
        <Button className="button" onPress={() => services.answerQuestion(undefined)}>
          Cancel
        </Button>
        <Button className="button primary" type="submit" autoFocus>
          Open the reel
        </Button>
      </div>
    </form>
  )
}
