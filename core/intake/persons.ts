/** Parts of field names by which county tables name people. */
const PERSON =
  /^(?:own(?:er|ers)?\d*|own_?.*|.*owner.*|tax_?payer.*|.*taxpayer.*|mail.*|.*mailing.*|grantee.*|grantor.*|buyer.*|seller.*|lessee.*|tenant.*|resident.*|occupant.*|contact.*|care_?of.*|c_o|in_?care.*|first_?name|last_?name|full_?name|middle_?name|sur_?name|fname|lname|deed_?holder.*|phone.*|e_?mail.*)$/i;

/** True for a field that looks as if it names people: such a field is never taken unless asked for. */
export function looksLikePerson(field: string): boolean {
  return PERSON.test(field.trim().replace(/[\s.-]+/g, '_'));
}
