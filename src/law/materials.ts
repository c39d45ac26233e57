/** A material of an instrument that some law asks about, and the wider kinds it belongs to. */
const kinds = {
  ivory: [],
  'ivory:elephant': ['ivory', 'appendix-I'],
  'ivory:african-elephant': ['ivory:elephant'],
  'ivory:asian-elephant': ['ivory:elephant'],
  'ivory:mammoth': ['ivory'],
  'ivory:hippopotamus': ['ivory', 'appendix-II'],
  'ivory:killer-whale': ['ivory', 'appendix-II'],
  'ivory:narwhal': ['ivory', 'appendix-II'],
  'ivory:sperm-whale': ['ivory', 'appendix-I'],
  'ivory:walrus': ['ivory'],
  tortoiseshell: ['appendix-I'],
  wood: [],
  'wood:brazilian-rosewood': ['wood', 'appendix-I'],
  'wood:other-rosewood': ['wood', 'appendix-II'],
  'wood:bubinga': ['wood', 'appendix-II'],
  'wood:ebony-madagascar': ['wood', 'appendix-II'],
  'wood:ebony-other': ['wood'],
  'wood:mahogany-neotropical': ['wood', 'appendix-II'],
  'wood:cedrela-neotropical': ['wood', 'appendix-II'],
  'wood:african-mahogany': ['wood', 'appendix-II'],
  'wood:other': ['wood'],
  lead: [],
  'lead:key-weights': ['lead'],
  'lead:paint': ['lead'],
  'crate:solid-wood': [],
  bone: [],
  celluloid: [],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type ListedMaterial = keyof typeof kinds;
/** Every material that some law asks about. */
export const listedMaterials = Object.keys(kinds) as readonly ListedMaterial[] as readonly [ListedMaterial, ...ListedMaterial[]];

/** A material, or a list of the convention on trade in wild species, as a rule speaks of it. */
export const materialGroups = [...listedMaterials, 'appendix-I', 'appendix-II'] as const;
export type MaterialGroup = (typeof materialGroups)[number];

const isMaterial = (name: string): name is ListedMaterial => Object.hasOwn(kinds, name);

/** The material and every wider kind it is of. */
export function kindsOf(material: ListedMaterial): ReadonlySet<string> {
  const found = new Set<string>([material]);
  const open: string[] = [material];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    for (const wider of isMaterial(next) ? kinds[next] : []) if (!found.has(wider)) { found.add(wider); open.push(wider); }
  }
  return found;
}

/** `yes` where the material is of the group; `maybe` where it was named too widely to tell; `no` otherwise. */
export function belongsTo(material: ListedMaterial, group: MaterialGroup): 'yes' | 'maybe' | 'no' {
  if (kindsOf(material).has(group)) return 'yes';
  const narrower = listedMaterials.some((other) => other !== material && kindsOf(other).has(material) && kindsOf(other).has(group));
  return narrower ? 'maybe' : 'no';
}
