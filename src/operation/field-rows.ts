/** A JSON Schema as plain data. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/** One field of a schema as a reader sees it. */
export interface FieldRow {
  /** `notes[].downWeightG`; of several alternatives, the number of the one it belongs to is in `variant`. */
  readonly path: string;
  readonly variant: number | undefined;
  readonly kind: string;
  readonly unit: string;
  readonly allowed: string;
  readonly required: boolean;
  readonly fallback: unknown;
  readonly help: string;
}

/** Unit suffixes of field names, longest first. */
const SUFFIXES: readonly (readonly [RegExp, string])[] = [
  [/GPerMm3$/u, 'g/mm³'],
  [/GMm2$/u, 'g·mm²'],
  [/GMm$/u, 'g·mm'],
  [/MPerS2$/u, 'm/s²'],
  [/NPerMm$/u, 'N/mm'],
  [/GPerCm3$/u, 'g/cm³'],
  [/GPerM3$/u, 'g/m³'],
  [/CentsPerPct$/u, 'ct/%'],
  [/PerPct$/u, '1/%'],
  [/[dD]bPerKm$/u, 'dB/km'],
  [/DbA$/u, 'dB(A)'],
  [/^hours$/u, 'h'],
  [/^seconds$/u, 's'],
  [/KPa$/u, 'kPa'],
  [/[a-z]M2$/u, 'm²'],
  [/(?:temperature|surface|Point)C$/u, '°C'],
  [/beatsPerSecond$/u, '1/s'],
  [/Nm2$/u, 'N·m²'],
  [/Mm2$/u, 'mm²'],
  [/GPerM$/u, 'g/m'],
  [/KgM3$/u, 'kg/m³'],
  [/[a-z]M3$/u, 'm³'],
  [/KgPerS$/u, 'kg/s'],
  [/MPa$/u, 'MPa'],
  [/GPa$/u, 'GPa'],
  [/PerK$/u, '1/K'],
  [/K$/u, 'K'],
  [/(?:Mm|sMm)$/u, 'mm'],
  [/(?:[a-z]|^)G$/u, 'g'],
  [/N$/u, 'N'],
  [/Deg$/u, '°'],
  [/Hz$/u, 'Hz'],
  [/Cents$/u, 'ct'],
  [/Pct$/u, '%'],
  [/Ms$/u, 'ms'],
  [/MPerS$/u, 'm/s'],
  [/(?:[a-z]|p\d\d)H$/u, 'h'],
  [/(?:[a-z]|^)Db$/u, 'dB'],
  [/(?:[a-z]|^)S$/u, 's'],
];

/** The unit a field name ends in, or an empty text for a pure number. */
export function unitOfField(name: string): string {
  return SUFFIXES.find(([suffix]) => suffix.test(name))?.[1] ?? '';
}

/** Every field of an object schema, those of nested lists and groups under their path. */
export function fieldRowsOf(schema: JsonSchema): readonly FieldRow[] {
  const branches = branchesOf(schema);
  return branches.flatMap((branch, index) => rowsUnder('', branch, branches.length > 1 ? index + 1 : undefined));
}

function rowsUnder(path: string, schema: JsonSchema, variant: number | undefined): readonly FieldRow[] {
  const properties = (schema['properties'] ?? {}) as Readonly<Record<string, JsonSchema>>;
  const required = (schema['required'] ?? []) as readonly string[];
  return Object.entries(properties).flatMap(([name, field]) => {
    const full = path === '' ? name : `${path}.${name}`;
    const row: FieldRow = {
      path: full,
      variant,
      kind: kindOf(field),
      unit: isNumeric(field) ? unitOfField(name) : '',
      allowed: allowedOf(field),
      required: required.includes(name),
      fallback: field['default'],
      help: typeof field['description'] === 'string' ? field['description'] : '',
    };
    return [row, ...innerRows(full, field, variant)];
  });
}

function innerRows(path: string, field: JsonSchema, variant: number | undefined): readonly FieldRow[] {
  return branchesOf(field).flatMap((branch) => {
    const items = branch['items'] as JsonSchema | undefined;
    return items === undefined ? rowsUnder(path, branch, variant) : innerRows(`${path}[]`, items, variant);
  });
}

function branchesOf(schema: JsonSchema): readonly JsonSchema[] {
  const branches = schema['anyOf'] ?? schema['oneOf'];
  return Array.isArray(branches) ? (branches as readonly JsonSchema[]) : [schema];
}

function isNumeric(field: JsonSchema): boolean {
  return branchesOf(field).some((branch) => {
    const items = branch['items'] as JsonSchema | undefined;
    return items === undefined ? ['number', 'integer'].includes(String(branch['type'])) : isNumeric(items);
  });
}

function kindOf(field: JsonSchema): string {
  const kinds = branchesOf(field).map((branch) => {
    if (Array.isArray(branch['enum'])) return 'choice';
    if ('const' in branch) return 'choice';
    if (typeof branch['contentMediaType'] === 'string') return 'recording';
    if (branch['type'] === 'array') return `list of ${kindOf((branch['items'] ?? {}) as JsonSchema)}`;
    return KINDS[String(branch['type'])] ?? (typeof branch['$ref'] === 'string' ? branch['$ref'].replace(/^.*\//u, '') : 'any');
  });
  return [...new Set(kinds)].join(' or ');
}

const KINDS: Readonly<Record<string, string>> = { number: 'number', integer: 'whole number', string: 'text', boolean: 'yes or no', object: 'group', null: 'null' };

function allowedOf(field: JsonSchema): string {
  return [...new Set(branchesOf(field).map(limitsOf).filter((text) => text !== ''))].join(' or ');
}

function limitsOf(branch: JsonSchema): string {
  if (Array.isArray(branch['enum'])) return branch['enum'].map(String).join(', ');
  if ('const' in branch) return String(branch['const']);
  const items = branch['items'] as JsonSchema | undefined;
  const said = (
    [['minimum', '≥'], ['exclusiveMinimum', '>'], ['maximum', '≤'], ['exclusiveMaximum', '<'], ['minItems', 'entries ≥'], ['maxItems', 'entries ≤'], ['minLength', 'characters ≥'], ['maxLength', 'characters ≤']] as const
  ).flatMap(([key, sign]) => (typeof branch[key] === 'number' ? [`${sign} ${String(branch[key])}`] : []));
  const inner = items === undefined ? '' : allowedOf(items);
  return [...said, ...(inner === '' ? [] : [`each ${inner}`])].join(', ');
}
