using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Instruments;

/// <summary>How an instrument is asked, and how what it answers is read; generic by protocol, not by make.</summary>
public sealed record MeterProfile
{
    /// <summary>What settles unless a profile says otherwise.</summary>
    public static readonly TimeSpan UsualSettle = TimeSpan.FromSeconds(0.3);

    /// <summary>How long an answer is waited for unless a profile says otherwise: a slow integrating meter takes a second or two.</summary>
    public static readonly TimeSpan UsualWait = TimeSpan.FromSeconds(5);

    /// <summary>
    /// Values this near together stand still, a part of their size: a few times the last digits of a bench meter, well under the 0.4 % of
    /// one degree. Our choice.
    /// </summary>
    public const double UsualStill = 0.0005;

    /// <summary>What the shop calls it.</summary>
    public required string Name { get; init; }

    /// <summary>What is measured, as in files: "dcResistance", or "temperature".</summary>
    public required string Quantity { get; init; }

    /// <summary>What kind of number that is.</summary>
    public required QuantityKind Kind { get; init; }

    /// <summary>Unit of a number that comes without one.</summary>
    public required Unit Unit { get; init; }

    /// <summary>Sent once when the connection is made, each with the line end.</summary>
    public IReadOnlyList<string> Begin { get; init; } = [];

    /// <summary>What asks for a value; empty for an instrument that sends by itself.</summary>
    public string Ask { get; init; } = "";

    /// <summary>What ends a line, both ways.</summary>
    public string End { get; init; } = "\n";

    /// <summary>Which of the numbers of a line: 1 for the first; 0 for the last.</summary>
    public int Place { get; init; } = 1;

    /// <summary>True when <see cref="Place"/> was counted out in the profile, so that a comma is sure to part two numbers.</summary>
    public bool IsPlaceCounted { get; init; }

    /// <summary>True where a comma is the decimal sign.</summary>
    public bool HasDecimalComma { get; init; }

    /// <summary>The instrument's own words for units, as after a number; null for a word that means nothing ("AUTO").</summary>
    public IReadOnlyDictionary<string, Unit?> Words { get; init; } = new Dictionary<string, Unit?>();

    /// <summary>What stands for "over range": a number as sent, or a word that is in the line.</summary>
    public string Overload { get; init; } = "9.9E37";

    /// <summary>For how long a value must stand still.</summary>
    public TimeSpan Settle { get; init; } = UsualSettle;

    /// <summary>How far apart values may lie that stand still, a part of their size.</summary>
    public double Still { get; init; } = UsualStill;

    /// <summary>How long one answer is waited for.</summary>
    public TimeSpan Wait { get; init; } = UsualWait;

    /// <summary>How its serial line is set.</summary>
    public SerialLine Serial { get; init; } = new();
}

/// <summary>How a serial line is set.</summary>
/// <param name="Baud">Bits a second.</param>
/// <param name="DataBits">Bits of a character, 7 or 8.</param>
/// <param name="Parity">"none", "even" or "odd".</param>
/// <param name="StopBits">1 or 2.</param>
public sealed record SerialLine(int Baud = 9600, int DataBits = 8, string Parity = "none", int StopBits = 1);
