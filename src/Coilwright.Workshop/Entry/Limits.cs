namespace Coilwright.Workshop.Entry;

/// <summary>What a field may hold: a kind of quantity between two ends, and an example for messages.</summary>
/// <param name="Kind">What it measures.</param>
/// <param name="Min">Smallest allowed value, in the unit of <see cref="QuantityKind"/>.</param>
/// <param name="Max">Largest allowed value.</param>
/// <param name="Unit">Unit in which the ends are told.</param>
/// <param name="Example">A sensible entry.</param>
public sealed record Limits(QuantityKind Kind, double Min, double Max, string Unit, string Example)
{
    /// <summary>What is said of a value outside.</summary>
    public string Outside { get; init; } = "outside what is possible here";

    /// <summary>The range in words, for example "1 mm to 200 mm".</summary>
    public string Range => $"{End(Min)} to {End(Max)}";

    /// <summary>True unless the value lies outside; an unknown value is not outside.</summary>
    public bool Allows(double si) => !(si < Min || si > Max);

    private string End(double si) => QuantityParser.Echo(new Entered(si, "", Unit), Kind);
}
