using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Shared;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Tests.Recipes;

namespace Coilwright.Workshop.Tests.Measured;

/// <summary>
/// Forecasts of the demo's recipes beside ranges that others report for their kind: second-hand, so that they can only show a forecast that
/// is wrong as a whole. Where a recipe's inductance lies outside its kind's range the capacitance that the range implies is compared.
/// </summary>
public sealed class PublishedRangesTests
{
    private const string Source =
        "ranges reported by a public measurement procedure: tests/Reference/measured/published-ranges.csv [PublishedRanges]";
    private const string Because = "reference: a range of many makers' pickups, second-hand; plausibility only";

    [Theory]
    [InlineData("harbour-bridge")]
    [InlineData("sandbar-wide")]
    [InlineData("breakwater-twin")]
    [InlineData("tideway-bass")]
    public void The_unloaded_resonance_overlaps_the_range_of_its_kind(string name)
    {
        PublishedRange range = Read().Single(one => one.Recipe == name);
        PickupForecast pickup = Forecast(name);
        Estimate henry = pickup.Inductance.Estimate,
            peak = pickup.UnloadedResonance!.Frequency.Estimate;
        if (henry.High >= range.LowHenry && henry.Low <= range.HighHenry)
        {
            Overlap($"Unloaded resonance, {range.Kind}", peak, range.LowHz, range.HighHz, "Hz");
            return;
        }

        string beside = string.Create(
            CultureInfo.InvariantCulture,
            $"; {henry.Low:0.0} to {henry.High:0.0} H against {range.LowHenry:0} to {range.HighHenry:0} H, so its resonance of "
                + $"{peak.Low:0} to {peak.High:0} Hz stands beside {range.LowHz:0} to {range.HighHz:0} Hz"
        );
        Estimate farad = pickup.Capacitance.Estimate;
        Overlap(
            $"Capacitance that the range implies, {range.Kind}, whose inductance lies outside it",
            new Estimate(farad.Value * 1e12, farad.Low * 1e12, farad.High * 1e12, farad.Basis),
            Farad(range.HighHz, range.HighHenry) * 1e12,
            Farad(range.LowHz, range.LowHenry) * 1e12,
            "pF",
            beside
        );
    }

    [Theory]
    [MemberData(nameof(DemoFiles.Recipes), MemberType = typeof(DemoFiles))]
    public void The_interval_of_the_unloaded_resonance_is_no_wider_than_a_factor_of_2_5(string name)
    {
        Estimate peak = Forecast(name).UnloadedResonance!.Frequency.Estimate;
        Assert.True(peak.High < 2.5 * peak.Low, FormattableString.Invariant($"{name}: {peak.Low:0} to {peak.High:0} Hz"));
        Assert.True(peak.High > 1.2 * peak.Low, "narrower than assumed leads allow");
    }

    /// <summary>Two intervals overlap when each one's low end lies below the other's high end.</summary>
    private static void Overlap(string check, Estimate found, double low, double high, string unit, string beside = "") =>
        Evidence
            .Outside(check + ": forecast interval and published range overlap", Source, "read-secondary", Because)
            .Inside(Math.Clamp((low + high) / 2, found.Low, found.High), low, high, unit)
            .Record(string.Create(CultureInfo.InvariantCulture, $"forecast {found.Low:0} to {found.High:0} {unit}{beside}"));

    private static double Farad(double hz, double henry) => 1 / (4 * Math.PI * Math.PI * hz * hz * henry);

    private static PickupForecast Forecast(string name) =>
        Forecaster
            .Predict(
                RecipeModelBuilder.ToModel(RecipeReader.Read(DemoFiles.Recipe(name)).Value!),
                load: null,
                cancel: TestContext.Current.CancellationToken
            )
            .Pickup;

    private static IEnumerable<PublishedRange> Read() =>
        File.ReadLines(RepositoryPath.Of("tests", "Reference", "measured", "published-ranges.csv"))
            .Where(line => line[0] != '#')
            .Skip(1)
            .Select(line => line.Split(','))
            .Select(cells => new PublishedRange(
                cells[0],
                cells[1],
                Number(cells[2]),
                Number(cells[3]),
                Number(cells[4]),
                Number(cells[5])
            ));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private sealed record PublishedRange(string Recipe, string Kind, double LowHenry, double HighHenry, double LowHz, double HighHz);
}
