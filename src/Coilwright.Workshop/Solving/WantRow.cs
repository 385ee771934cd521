using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Solving;

/// <summary>How a want of a form is meant.</summary>
public enum WantHow
{
    AtLeast,
    AtMost,
    Between,
    About,
    Most,
    Least,
}

/// <summary>One want as a row of a form.</summary>
/// <param name="Quantity">Key of the quantity; empty when none was chosen.</param>
/// <param name="How">How it is wanted.</param>
/// <param name="Value">The value, or the lower end, as typed; a bare number counts in <see cref="UnitOf"/>.</param>
/// <param name="UpTo">The upper end, or what is given or taken of "about", as typed.</param>
public sealed record WantRow(string Quantity, WantHow How, string Value, string UpTo)
{
    /// <summary>A row in which nothing was said yet.</summary>
    public static WantRow Blank { get; } = new("", WantHow.About, "", "");

    /// <summary>True where nothing was said.</summary>
    public bool IsBlank => Quantity.Length == 0 && Value.Length == 0 && UpTo.Length == 0;

    /// <summary>The want as it is typed at the command line: "dcResistance=8.2 kΩ±2 %".</summary>
    public string Line =>
        How switch
        {
            WantHow.AtLeast => $"{Quantity}>={WithUnit(Value)}",
            WantHow.AtMost => $"{Quantity}<={WithUnit(Value)}",
            WantHow.Between => $"{Quantity}={WithUnit(Value)}..{WithUnit(UpTo)}",
            WantHow.Most => $"{Quantity}=max",
            WantHow.Least => $"{Quantity}=min",
            _ => $"{Quantity}={WithUnit(Value)}" + (UpTo.Length > 0 ? $"±{Given}" : ""),
        };

    /// <summary>The value alone, as the reader of wants takes it.</summary>
    internal string Wanted => Line[(Quantity.Length + (How is WantHow.AtLeast or WantHow.AtMost ? 2 : 1))..];

    /// <summary>The row of a line; where it is no want, or of an unknown quantity, what was typed stands as the value.</summary>
    public static WantRow Of(string line, IReadOnlyCollection<string> known)
    {
        if (ObjectiveParser.Split(line, known) is not { } parts || !known.Contains(parts.Quantity))
        {
            return Blank with { Value = line.Trim() };
        }

        string[] ends = parts.Value.Split("..", 2, StringSplitOptions.TrimEntries),
            about = parts.Value.Replace("+/-", "±", StringComparison.Ordinal).Split('±', 2, StringSplitOptions.TrimEntries);
        return (parts.How, parts.Value.ToLowerInvariant()) switch
        {
            (">=" or "≥" or ">", _) => new WantRow(parts.Quantity, WantHow.AtLeast, parts.Value, ""),
            ("<=" or "≤" or "<", _) => new WantRow(parts.Quantity, WantHow.AtMost, parts.Value, ""),
            (_, "max" or "most") => new WantRow(parts.Quantity, WantHow.Most, "", ""),
            (_, "min" or "least") => new WantRow(parts.Quantity, WantHow.Least, "", ""),
            _ when ends.Length == 2 => new WantRow(parts.Quantity, WantHow.Between, ends[0], ends[1]),
            _ => new WantRow(parts.Quantity, WantHow.About, about[0], about.Length == 2 ? about[1] : ""),
        };
    }

    /// <summary>In what a bare number of a quantity counts: "kΩ"; empty for a plain number.</summary>
    public static string UnitOf(string quantity) =>
        (Workshop.Quantities.Quantity.FindResult(quantity), ObjectiveValue.IsLevel(quantity) || quantity == QuantityKey.Output) switch
        {
            (_, true) => "dB",
            ({ Kind: QuantityKind.Frequency }, _) => "kHz",
            ({ Kind: not null } found, _) => found.DisplayUnit,
            _ => "",
        };

    private string Given => CountParser.TryNumber(UpTo, out _) ? $"{UpTo} {UnitOfGiven}" : UpTo;

    private string UnitOfGiven => ObjectiveValue.IsLevel(Quantity) || Quantity == QuantityKey.Output ? "dB" : "%";

    private string WithUnit(string typed) => CountParser.TryNumber(typed, out _) ? $"{typed} {UnitOf(Quantity)}".Trim() : typed;
}
