namespace Coilwright.Physics.Wire;

/// <summary>Tension to wind a wire at: 50–80 % of the most it should see, both of one chart [Tension]. N and gram-force.</summary>
/// <param name="LowN">Lower end of the working band, N.</param>
/// <param name="HighN">Upper end of the working band, N.</param>
/// <param name="MaximumN">Largest tension, N.</param>
/// <param name="IsExtrapolated">True when no chart row stands for the size and the law of the others was used.</param>
/// <param name="Note">What to know about the figure; empty as a rule.</param>
public sealed record TensionBand(double LowN, double HighN, double MaximumN, bool IsExtrapolated, string Note)
{
    /// <summary>Whose figures they are, for wherever they are shown [Tension].</summary>
    public const string Source = "chart of Phelps Dodge Magnet Wire Co., in a reproduction";

    /// <summary>One gram-force, N (exact).</summary>
    public const double NewtonPerGramForce = 9.80665e-3;

    /// <summary>
    /// Largest stress of the chart's 34–43 AWG rows on the copper's section, as maximum tension over diameter squared, N/m².
    /// </summary>
    /// <remarks>54.1 N/mm², the mean of those rows (calculated).</remarks>
    public const double MaximumPerDiameterSquaredNPerM2 = 54.1e6;

    private static readonly Lazy<Dictionary<double, double>> Chart = new(() =>
        WireTables.Tensions().ToDictionary(t => t.Awg, t => t.MaxGramForce)
    );

    /// <summary>Lower end of the working band, gf.</summary>
    public double LowGramForce => LowN / NewtonPerGramForce;

    /// <summary>Upper end of the working band, gf.</summary>
    public double HighGramForce => HighN / NewtonPerGramForce;

    /// <summary>Largest tension, gf.</summary>
    public double MaximumGramForce => MaximumN / NewtonPerGramForce;

    /// <summary>
    /// The band of a gauge or metric size; null when there is no such size. The chart's row where it has one, the d² law elsewhere.
    /// </summary>
    /// <param name="gauge">As in a recipe, "AWG 42" or "0.063 mm".</param>
    public static TensionBand? For(string gauge)
    {
        if (WireCatalogue.Standard.Find(gauge) is not WireSize size)
        {
            return null;
        }

        if (size.IsMetric || !Chart.Value.TryGetValue(size.Number, out double maximumGramForce))
        {
            return For(size.Bare.NominalM);
        }

        double maximumN = maximumGramForce * NewtonPerGramForce;
        double lawN = MaximumPerDiameterSquaredNPerM2 * size.Bare.NominalM * size.Bare.NominalM;
        string note =
            maximumN < 0.85 * lawN
                ? "The chart's figure lies well under the law of its other rows and may be a misprint there; it is the careful one."
                : "";
        return Of(maximumN, false, note);
    }

    /// <summary>The band of a bare diameter by the d² law.</summary>
    /// <param name="bareDiameterM">Diameter without enamel, m, 1 µm…10 mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter lies outside its range.</exception>
    public static TensionBand For(double bareDiameterM)
    {
        double diameterM = Require.InRange(bareDiameterM, 1e-6, 0.01);
        return Of(
            MaximumPerDiameterSquaredNPerM2 * diameterM * diameterM,
            true,
            "From the square of the diameter, not from a chart's row."
        );
    }

    private static TensionBand Of(double maximumN, bool extrapolated, string note) =>
        new(0.5 * maximumN, 0.8 * maximumN, maximumN, extrapolated, note);
}
