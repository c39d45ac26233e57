/** English: money as typed and as worked out. */
export const money = {
  'issue.required.money': 'Nothing is given here. An amount in {currency} is needed.',
  'issue.format.money': '“{given}” cannot be read as an amount in {currency}. Write it as {sample}.',
  'issue.format.moneyDigits': '“{given}” has more decimals than {currency} has: {digits, plural, =0 {none are} one {at most # is} other {at most # are}} allowed. Nothing was rounded.',
  'issue.ambiguous.money': '“{given}” could be thousands or decimals. Write {sample}, or the thousands without a mark.',
  'issue.unit.money': '“{given}” names another currency. Amounts here are in {currency}.',
  'issue.range.amountTooLarge': '{given} is too large to be held to the last unit.',
} as const;
