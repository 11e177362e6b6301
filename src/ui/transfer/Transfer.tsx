import { useEffect } from 'react'
import { useApp, useAppState } from '../appContext.ts'
import { Checklist } from './Checklist.tsx'
import { FlashCard } from './FlashCard.tsx'
import { PassCard } from './PassCard.tsx'
import { PassList } from './PassList.tsx'
import { TransferFields } from './TransferFields.tsx'

/** The graded pass: what stands before it, how it is made, and what came of it. */
export const Transfer = () => {
  const { services } = useApp()
  const reelId = useAppState((state) => state.reelId)
  const media = useAppState((state) => state.media)
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at again for each reel and scan
  useEffect(() => {
    void services.transfer.look()
  }, [services, reelId, media])
  return (
    <main className="page hand-over transfer" aria-label="Transfer">
      <Checklist />
      <TransferFields />
      <PassCard />
      <PassList />
      <FlashCard />
    </main>
  )
}
