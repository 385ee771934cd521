namespace Coilwright.Formats.Tables;

/// <summary>One coil of a table of coils at hand.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Family">What kind of coil it is; empty when the table does not say.</param>
/// <param name="Values">What is known of it in SI by quantity: dcResistance at 20 °C when a temperature was given, turns,
/// inductance.</param>
/// <param name="Carried">Columns of the shop's own, carried through as they are.</param>
public sealed record CoilRow(
    string Tag,
    string Family,
    IReadOnlyDictionary<string, double> Values,
    IReadOnlyDictionary<string, string> Carried
)
{
    /// <summary>A value, or NaN when it was not measured.</summary>
    public double Value(string quantity) => Values.GetValueOrDefault(quantity, double.NaN);
}
