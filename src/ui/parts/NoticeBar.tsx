import { useEffect } from 'react'
import { putNoticeAway } from '../../store/notices.ts'
import { useApp, useAppState } from '../appContext.ts'

const SHOWN_FOR_MS = 6000

/** One notice at a time, a sentence a line: problems stay until put away, other news goes by itself. */
export const NoticeBar = () => {
  const { store } = useApp()
  const notice = useAppState((state) => state.notice)
  useEffect(() => {
    if (!notice || notice.isProblem) return
    const timer = setTimeout(() => putNoticeAway(store), SHOWN_FOR_MS)
    return () => clearTimeout(timer)
  }, [store, notice])
  return (
    <div className="notice-place" role={notice?.isProblem ? 'alert' : 'status'}>
      {notice && (
        <div className={`notice${notice.isProblem ? ' is-problem' : ''}`}>
          {notice.isProblem && <span aria-hidden="true">▲ </span>}
          <div className="notice-lines">
            {notice.says.split('\n').map((line, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: lines of one text, in its order
              <p key={i}>{line}</p>
            ))}
          </div>
          <button type="button" className="button" onClick={() => putNoticeAway(store)}>
            Close
          </button>
        </div>
      )}
    </div>
  )
}
