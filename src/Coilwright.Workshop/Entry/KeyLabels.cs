using System.Collections.Frozen;
using System.Text.RegularExpressions;
using Coilwright.Analysis.Diagnosis;
using Coilwright.Physics.Materials;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Entry;

/// <summary>
/// What a person reads in place of a key of the file formats: quantities, materials, enamels, films, causes. The one place where they are
/// known.
/// </summary>
public static partial class KeyLabels
{
    private static readonly FrozenDictionary<string, string> s_labels = new Dictionary<string, string>(
        Quantity
            .All.Select(quantity => KeyValuePair.Create(quantity.Key, quantity.Label))
            .Concat(CauseTable.All.Select(cause => KeyValuePair.Create(cause.Key, cause.Label)))
    )
    {
        // what a final test speaks of beside quantities
        ["gauss"] = Quantity.PoleField.Label,
        ["looks"] = "looks",
        ["polarity"] = "polarity",
        ["reference"] = "reference",

        // materials and films whose key is more than its words with hyphens
        ["abs"] = "ABS",
        ["grade-1"] = "grade 1",
        ["grade-2"] = "grade 2",
        ["grade-3"] = "grade 3",

        // words that people join by a hyphen too
        ["counter-clockwise"] = "counter-clockwise",
        ["hand-guided"] = "hand-guided",
        ["log-normal"] = "log-normal",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Keys that a sentence may hold: those above, materials and enamels.</summary>
    private static readonly Lazy<Regex> s_inside = new(() =>
        Words(
            s_labels
                .Keys.Concat(MaterialCatalogue.All.Select(material => material.Key))
                .Concat(WireCatalogue.Standard.Insulations.Select(enamel => enamel.Key))
                .Where(key => Of(key) != key && key.Contains('-', StringComparison.Ordinal))
        )
    );

    /// <summary>
    /// The label of a key; one that only joins plain words, by hyphens or capitals, is those words. All else stays as it is.
    /// </summary>
    public static string Of(string key)
    {
        if (s_labels.TryGetValue(key, out string? label))
        {
            return label;
        }

        if (Hyphened().IsMatch(key))
        {
            return key.Replace('-', ' ');
        }

        return Joined().IsMatch(key) ? Capital().Replace(key, found => " " + found.Value.ToLowerInvariant()) : key;
    }

    /// <summary>The key that was typed, as itself or as its label, in any case; what was typed where it is none of them.</summary>
    /// <param name="typed">What a person typed.</param>
    /// <param name="keys">Those that may stand there.</param>
    public static string KeyOf(string typed, IEnumerable<string> keys)
    {
        string text = string.Join(' ', typed.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return keys.FirstOrDefault(key => Same(key, text) || Same(Of(key), text) || Same(In(key), text)) ?? typed;
    }

    /// <summary>A sentence with labels in place of its keys and of its paths into a document.</summary>
    public static string In(string sentence)
    {
        string placed = Path().Replace(sentence, path => FieldLabels.Inside(path.Value));
        return CamelInside().Replace(s_inside.Value.Replace(placed, key => Of(key.Value)), key => Of(key.Value));
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    private static Regex Words(IEnumerable<string> keys)
    {
        string any = string.Join('|', keys.Distinct().OrderByDescending(key => key.Length).Select(Regex.Escape));
        return new Regex($@"(?<![\w-])(?:{any})(?![\w-])", RegexOptions.CultureInvariant);
    }

    [GeneratedRegex("^[a-z][a-z0-9]*(-[a-z0-9]+)+$", RegexOptions.CultureInvariant)]
    private static partial Regex Hyphened();

    [GeneratedRegex("^[a-z]+([A-Z][a-z0-9]*)+$", RegexOptions.CultureInvariant)]
    private static partial Regex Joined();

    [GeneratedRegex(@"(?<![\w.-])[a-z]{2,}(?:[A-Z][a-z0-9]+)+(?![\w-])", RegexOptions.CultureInvariant)]
    private static partial Regex CamelInside();

    [GeneratedRegex("[A-Z]", RegexOptions.CultureInvariant)]
    private static partial Regex Capital();

    [GeneratedRegex(@"(?<![\w.])[a-z]\w*\[\d{1,6}\](?:\.\w+(?:\[\d{1,6}\])?)*", RegexOptions.CultureInvariant)]
    private static partial Regex Path();
}
