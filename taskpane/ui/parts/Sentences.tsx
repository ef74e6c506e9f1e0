/** Sentences as a list, each said once. */
export const Sentences = ({ of }: { readonly of: readonly string[] }) => (
  <ul className="bullets">
    {of.map((sentence) => (
      <li key={sentence}>{sentence}</li>
    ))}
  </ul>
);
