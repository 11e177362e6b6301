/** The room that rows of a table take which are not drawn. */
export const Room = ({ height }: { height: number }) => (
  <tr className="room" style={{ height }}>
    <td colSpan={6} />
  </tr>
)
