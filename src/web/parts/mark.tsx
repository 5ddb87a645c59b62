/** The mark: a ledger's ruled line that something has grazed a mouthful from, and the grain that is left. */
export function Mark() {
  return (
    <svg class="mark" viewBox="0 0 32 32" width="32" height="32" aria-hidden="true">
      <path class="mark-rule" d="M3 25.5H29" />
      <path class="mark-graze" d="M3 18.5H7.5A8.5 8.5 0 0 0 24.5 18.5H29" />
      <path class="mark-grain" d="M19 3.5C23.5 7 22 13 16.5 14.5 13.5 11 14 6 19 3.5Z" />
    </svg>
  );
}
