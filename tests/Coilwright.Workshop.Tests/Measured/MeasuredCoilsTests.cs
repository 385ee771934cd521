using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Shared;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Measured;

/// <summary>
/// Coils that somebody measured with their cores exchanged. Their bobbins are not known: each size runs over what is common practice (no
/// source), so that the question is whether the forecast of such an unmeasured bobbin, from end to end, holds what was read.
/// </summary>
public sealed class MeasuredCoilsTests
{
    private const string Source = "Music Electronics Forum, threads 41794 and 29988 [CoreReadings]";

    /// <summary>Common practice, no source: core width and length, winding height, length of the poles, mm.</summary>
    private static readonly Dictionary<string, double[][]> s_usual = new(StringComparer.Ordinal)
    {
        ["first"] =
        [
            [5.2, 6.1, 7.0],
            [58, 61, 64],
            [10, 11, 12],
            [15, 17],
        ],
        ["second"] =
        [
            [5.0, 5.6, 6.2],
            [58, 61, 64],
            [6, 6.5, 7],
            [11, 12.7],
        ],
    };

    /// <summary>Depth of the top of the poles over the middle of the winding, mm: flush with the cover of such a bobbin.</summary>
    private static readonly Dictionary<string, double> s_top = new(StringComparer.Ordinal) { ["first"] = 8, ["second"] = 5 };

    private static IEnumerable<Reading> Read() =>
        File.ReadLines(RepositoryPath.Of("tests", "Reference", "measured", "coils.csv"))
            .Where(line => line[0] != '#')
            .Skip(1)
            .Select(line => line.Split(','))
            .Select(cells => new Reading(cells[0], Number(cells[1]), cells[2], Number(cells[4])));

    [Fact]
    public void Measured_inductance_lies_in_the_forecast_of_a_usual_bobbin()
    {
        Evidence check = Evidence.Outside(
            "Measured coils, cores exchanged: inductance inside the forecast of a bobbin whose sizes are not known",
            Source,
            "read",
            "reference: sizes are not given, so the bound is the forecast's interval over usual sizes (common practice)"
        );
        foreach (Reading reading in Read())
        {
            (double Low, double, double High)[] all = [.. Sizes(reading.Coil).Select(sizes => Forecast(reading, sizes))];
            check.Holds(all.Min(one => one.Low), all.Max(one => one.High), reading.InductanceH, "H", $"{reading.Coil}, {reading.Core}");
        }

        check.Record();
    }

    [Theory]
    [InlineData("first", 0.04)]
    [InlineData("second", 0.02)]
    public void One_bobbin_of_usual_size_explains_all_readings_of_a_coil(string coil, double allowed)
    {
        Reading[] readings = [.. Read().Where(reading => reading.Coil == coil)];
        double[] best = Sizes(coil).MinBy(sizes => readings.Max(reading => Math.Abs(Misfit(reading, sizes))))!;
        Evidence check = Evidence.Outside(
            $"Measured coil, cores exchanged ({coil}): the usual bobbin that fits all readings best",
            Source,
            "read",
            "ratchet: sizes are chosen to fit, so that only their agreement with one another is tested; permeability is ours"
        );
        foreach (Reading reading in readings)
        {
            check.WithinPart(Forecast(reading, best).Value, reading.InductanceH, allowed, reading.Core);
        }

        string residuals = string.Join(", ", readings.Select(reading => Describe(reading, Misfit(reading, best))));
        check.Record(
            string.Create(
                CultureInfo.InvariantCulture,
                $"core {best[0]} mm × {best[1]} mm, height {best[2]} mm, poles {best[3]} mm: {residuals}"
            )
        );
    }

    private static string Describe(Reading reading, double misfit) =>
        string.Create(CultureInfo.InvariantCulture, $"{reading.Core} {100 * misfit:+0.0;-0.0} %");

    private static double Misfit(Reading reading, double[] sizes) => Forecast(reading, sizes).Value / reading.InductanceH - 1;

    private static IEnumerable<double[]> Sizes(string coil)
    {
        double[][] usual = s_usual[coil];
        return from width in usual[0]
            from length in usual[1]
            from height in usual[2]
            from pole in usual[3]
            select new[] { width, length, height, pole };
    }

    private static (double Low, double Value, double High) Forecast(Reading reading, double[] sizes)
    {
        string poles =
            reading.Core == "air"
                ? ""
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $$"""
                    , "poles": [ { "shape": "rod", "material": "{{reading.Core}}", "diameter": "4.75 mm", "length": "{{sizes[3]}} mm",
                        "count": 6, "spacing": "10.4 mm", "top": "{{s_top[reading.Coil]}} mm" } ]
                    """
                );
        string json = string.Create(
            CultureInfo.InvariantCulture,
            $$"""
            { "format": "coilwright.recipe/1", "name": "Measured", "connection": "single", "coils": [ { "name": "main",
                "bobbin": { "coreLength": "{{sizes[1]}} mm", "coreWidth": "{{sizes[0]}} mm", "windingHeight": "{{sizes[2]}} mm" },
                "wire": { "gauge": "AWG 43", "insulation": "plain-enamel", "build": "single" },
                "winding": { "turns": {{reading.Turns}}, "lay": "scattered", "pitch": "0.19 mm", "tension": "11 gf" }{{poles}} } ] }
            """
        );
        Recipe recipe = RecipeReader.Read(json).Value!;
        CoilForecast coil = Forecaster
            .Predict(RecipeModelBuilder.ToModel(recipe), load: null, cancel: TestContext.Current.CancellationToken)
            .Coils[0];
        return (coil.Inductance.Estimate.Low, coil.Inductance.Value, coil.Inductance.Estimate.High);
    }

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    private sealed record Reading(string Coil, double Turns, string Core, double InductanceH);
}
