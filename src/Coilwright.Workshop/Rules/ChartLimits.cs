namespace Coilwright.Workshop.Rules;

/// <summary>Where the frozen limits of a chart were taken anew, kept for the shop.</summary>
/// <param name="Recipe">Name of the recipe.</param>
/// <param name="Coil">The coil's name in the recipe, or "*" for any.</param>
/// <param name="Quantity">Quantity name of the file format.</param>
/// <param name="Since">Batch/tag of the coil that the limits begin at.</param>
/// <param name="Because">Why they were taken anew.</param>
/// <param name="Coils">From so many coils, 2…10,000; null for the usual number.</param>
public sealed record ChartLimits(string Recipe, string Coil, string Quantity, string Since, string Because, int? Coils = null)
{
    /// <summary>True when they are those of a chart.</summary>
    public bool AreOf(string recipe, string coil, string quantity) =>
        string.Equals(Recipe, recipe, StringComparison.OrdinalIgnoreCase) && (Coil == "*" || Coil == coil) && Quantity == quantity;
}
