/** The room that rows of a table take which are not drawn. */
export const Room = ({ height, columns = 6 }: { height: number; columns?: number }) => (
  <tr className="room" style={{ height }}>
    <td colSpan={columns} />
  </tr>
)
