import { useEffect } from 'react'
import { setView } from '../../store/session.ts'
import { useApp } from '../appContext.ts'
import { AgreeAnswer } from './AgreeAnswer.tsx'
import { AgreeHistory } from './AgreeHistory.tsx'
import { AgreeList } from './AgreeList.tsx'
import { AgreePicture } from './AgreePicture.tsx'
import { AnswersCard } from './AnswersCard.tsx'
import { PackCard } from './PackCard.tsx'
import { TakenInPart } from './TakenInPart.tsx'

/** Where a producer looks at the reel and says yes, here or by a pack that is sent. */
export const Agree = () => {
  const { store } = useApp()
  useEffect(() => {
    setView(store, {
      arrangement: 'alone',
      against: { kind: 'scanned' },
      showsExcursions: false,
      showsSafeAreas: false,
      showsAperture: false,
    })
  }, [store])
  return (
    <main className="agree" aria-label="Agree">
      <AgreeList />
      <section className="agree-stage" aria-label="The picture and what is said of it">
        <AgreePicture />
        <AgreeAnswer />
      </section>
      <div className="agree-side">
        <TakenInPart />
        <AgreeHistory />
        <PackCard />
        <AnswersCard />
      </div>
    </main>
  )
}
