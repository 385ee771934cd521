using System.Collections.Frozen;

namespace Coilwright.Workshop.Entry;

/// <summary>What a person reads in place of a key of the file formats: quantities, materials, enamels, films, causes. The one place where they are known.</summary>
public static class KeyLabels
{
    private static readonly FrozenDictionary<string, string> s_labels = new Dictionary<string, string>
    {
        // quantities
        ["dcResistance"] = "DC resistance",
        ["acResistance"] = "AC resistance",
        ["inductance"] = "inductance",
        ["q"] = "Q",
        ["turns"] = "turns",
        ["capacitance"] = "capacitance",
        ["loadedPeak"] = "loaded peak",
        ["unloadedPeak"] = "unloaded peak",
        ["poleField"] = "field over pole",
        ["gauss"] = "field over pole",
        ["firstSwing"] = "first swing",
        ["charge"] = "charge of the magnets, part of full",
        ["chargeField"] = "charge of the magnets, field",
        ["wireResistance"] = "ohms per metre of the wire",
        ["looks"] = "looks",
        ["polarity"] = "polarity",
        ["reference"] = "reference",

        // causes
        ["none"] = "nothing wrong",
        ["thin-wire"] = "thin wire",
        ["thick-wire"] = "thick wire",
        ["stretched-wire"] = "stretched wire",
        ["miscount"] = "wrong turn count",
        ["warm-coil"] = "warm coil",
        ["shorted-turns"] = "shorted turns",
        ["open"] = "open",
        ["broken-coupled"] = "broken wire",
        ["high-resistance-joint"] = "bad joint",
        ["coil-bridged"] = "one coil is shorted out",
        ["wired-parallel"] = "wired in parallel",
        ["wrong-gauge"] = "wrong gauge of wire",
        ["wrong-core"] = "wrong core",
        ["meter-error"] = "readings do not agree",

        // materials and films whose key is more than its words with hyphens
        ["abs"] = "ABS",
        ["grade-1"] = "grade 1",
        ["grade-2"] = "grade 2",
        ["grade-3"] = "grade 3",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The label of a key; a key that only joins plain words by hyphens is those words.</summary>
    public static string Of(string key) => s_labels.GetValueOrDefault(key) ?? (key.Any(char.IsUpper) ? key : key.Replace('-', ' '));
}
