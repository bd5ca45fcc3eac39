/** That a counted rate stands in the reading now, told where the button was pressed. */
export function PutSaid({ words }: { readonly words: string }) {
  return (
    <p role="status" className="count-said">
      {words}
    </p>
  );
}
