using System.Text.Json;
using Coilwright.Physics.Winding;
using Coilwright.Shared;

namespace Coilwright.Physics.Tests.Lay;

/// <summary>Against tests/Reference/field/lay.json: another turn-by-turn model, no outside authority, so agreement is a comparison and not a proof.</summary>
public sealed class LayReferenceTests
{
    private const double BareM = 63.5e-6;
    private const double OverallM = 71.1e-6;
    private const double HeightM = 11e-3;
    private const double MeanTurnM = 0.142;

    public static TheoryData<int, double, double, double, double, double, double> Rows()
    {
        TheoryData<int, double, double, double, double, double, double> data = [];
        using JsonDocument file = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reference", "field", "lay.json")));
        foreach (JsonElement row in file.RootElement.GetProperty("rows").EnumerateArray())
        {
            double[] v = [.. row.EnumerateArray().Select(x => x.GetDouble())];
            data.Add((int)v[0], v[1], v[2], v[3], v[4], v[5], v[6]);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Section_agrees_with_the_other_model(
        int turns, double pitchM, double jitterM, double capacitancePF, double evenLayerPF, double packing, double neighbours)
    {
        LaidSection[] sections = [.. Enumerable.Range(1, 3).Select(seed => LaySimulation.Run(new(OverallM, HeightM, turns, pitchM, jitterM), (ulong)seed))];

        // Formula against formula: 5e-5 leaves room for a vacuum permittivity rounded to 8.854 pF/m there (2e-5) and its numerical integral.
        double interlayerF = LayCapacitance.InterlayerF(BareM, OverallM, 3.5, 1, HeightM, MeanTurnM);
        Assert.Equal(evenLayerPF, 1e12 * LayCapacitance.EvenLayerCapacitanceF(turns * OverallM / HeightM, interlayerF), 5e-5 * evenLayerPF);

        // Build of a ragged top is a matter of definition, worth about one layer of 13 to 52 (2 to 8 %), and the other model's is not stated:
        // measured 1 % below to 5.6 % above it, neighbours 2.5 % below to 5 % above.
        Assert.InRange(sections.Average(s => s.PackingFactor) / packing, 0.95, 1.06);
        Assert.InRange(sections.Average(s => 2.0 * s.Neighbours.Count / turns) / neighbours, 0.95, 1.06);

        // Even: within 5 %, as the formula itself. Scattered: measured 12 to 21 % above the other model, whose rolling and facing are not stated;
        // the stated uncertainty of the figure is a factor of 1.5.
        double ratio = sections.Average(s => LayCapacitance.SelfCapacitanceF(s, BareM, OverallM, 3.5, 1, MeanTurnM)) * 1e12 / capacitancePF;
        Assert.InRange(ratio, jitterM > 0 ? 1 / 1.25 : 0.95, jitterM > 0 ? 1.25 : 1.05);
        EvidenceLog.Record(
            FormattableString.Invariant($"Lay: {turns} turns at {1e3 * pitchM:F4} mm pitch, {1e3 * jitterM:F2} mm wander: capacitance and packing over another model's"),
            "tests/Reference/field/lay.json: a turn-by-turn model outside this program", "derived, no outside authority",
            jitterM > 0 ? "0.80 to 1.25; 0.95 to 1.06" : "0.95 to 1.05; 0.95 to 1.06", FormattableString.Invariant($"{ratio:F3}; {sections.Average(s => s.PackingFactor) / packing:F3}"));
    }

    [Fact]
    public void Scatter_packs_looser_and_has_less_capacitance_than_an_even_lay()
    {
        double Capacitance(LaidSection s) => LayCapacitance.SelfCapacitanceF(s, BareM, OverallM, 3.5, 1, MeanTurnM);
        LaidSection even = LaySimulation.Run(new(OverallM, HeightM, 8000, OverallM, 0), 1);
        LaidSection scattered = LaySimulation.Run(new(OverallM, HeightM, 8000, 0.19e-3, 0.1e-3), 1);
        Assert.InRange(even.PackingFactor, 0.87, 0.907);
        Assert.InRange(scattered.PackingFactor, 0.75, 0.82);
        Assert.InRange(Capacitance(scattered) / Capacitance(even), 0.6, 0.8);
    }
}
