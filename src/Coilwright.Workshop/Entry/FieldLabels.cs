using System.Globalization;
using System.Text.RegularExpressions;

namespace Coilwright.Workshop.Entry;

/// <summary>What a field is called on a page, from the name it has in a document or a form.</summary>
public static partial class FieldLabels
{
    private const string Axes = "xyz";

    /// <summary>Lists of three lengths along the axes.</summary>
    private static readonly string[] s_axes = ["size", "centre"];

    private static readonly Dictionary<string, string> s_labels = new(StringComparer.Ordinal)
    {
        ["qAt"] = "Q at",
        ["inductanceAt"] = "inductance at",
        ["received"] = "wire received",
        ["tare"] = "empty spool",
        ["gross"] = "spool and wire",
        ["coreLength"] = "core length",
        ["coreWidth"] = "core width",
        ["toScreen"] = "capacitance to the screen",
        ["between"] = "capacitance between conductors",
        ["hot"] = "hot end",
        ["made"] = "how it is made",
        ["measured"] = "measured by caliper",
        ["sizes"] = "sizes of parts",
        ["moulded"] = "drawn and moulded",
        ["byHand"] = "drawn and built by hand",
        ["common"] = "nothing said",
        ["mostPart"] = "of a short length at most",
        ["mouldedShare"] = "from piece to piece, moulded",
        ["byHandShare"] = "from piece to piece, by hand",
        ["commonShare"] = "from piece to piece, nothing said",
        ["maxBuild"] = "most build",
        ["fillLimit"] = "limit of fill",
        ["person"] = "person",
        ["note"] = "note",
        ["json"] = "contents",
        ["at"] = "frequency",
        ["quantity"] = "coils wanted",
        ["supersedes"] = "correction",
        ["jig"] = "probe distance",
        ["bathLimits"] = "plastics",
        ["gaussSpread"] = "spread of the poles' fields",
        ["chargeTolerance"] = "deviation of a charge",
        ["sheetTemperature"] = "temperature of the sheet",
        ["testTolerances"] = "final test",
        ["leadColours"] = "leads",
        ["facesYou"] = "side that faces you",
        ["screwLead"] = "travel of the screw in one turn",
        ["travelPerStep"] = "travel of one step",
        ["stepsPerTurn"] = "steps of one turn of the screw",
        ["wheels"] = "teeth of the wheels",
        ["cost"] = "cost",
        ["pin"] = "PIN",
        ["token-name"] = "name of the token",
        ["token-role"] = "what the token is for",
        ["token-days"] = "days until it ends",
    };

    /// <summary>"coils[1].winding.turns" is "Coil 2, winding, turns"; empty for a problem with the whole.</summary>
    public static string Of(string field)
    {
        string words = Inside(field);
        return words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>The same inside a sentence: "coil 2, winding, turns".</summary>
    public static string Inside(string field) => string.Join(", ", field.Split('.', StringSplitOptions.RemoveEmptyEntries).Select(Step));

    private static string Step(string step)
    {
        Match match = Place().Match(step);
        string name = match.Success ? match.Groups[1].Value : step;
        string label = s_labels.GetValueOrDefault(name) ?? KeyLabels.Of(name);
        if (!match.Success)
        {
            return label;
        }

        int number = int.Parse(match.Groups[2].Value, NumberStyles.None, CultureInfo.InvariantCulture) + 1;
        if (s_axes.Contains(name))
        {
            return number <= Axes.Length ? $"{label} along {Axes[number - 1]}" : $"{label} {number}";
        }

        string single = label.EndsWith('s') ? label[..^1] : label;
        return string.Create(CultureInfo.InvariantCulture, $"{single} {number}");
    }

    [GeneratedRegex(@"^(\w+)\[(\d{1,6})\]$", RegexOptions.CultureInvariant)]
    private static partial Regex Place();
}
