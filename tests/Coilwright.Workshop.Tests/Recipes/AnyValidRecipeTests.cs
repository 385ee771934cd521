using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Spread;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>
/// Whatever the checks let through has a forecast: finite, passive, in order. COILWRIGHT_RECIPES sets how many are drawn,
/// COILWRIGHT_RECIPES_FROM from which seed.
/// </summary>
public class AnyValidRecipeTests
{
    private const int Usual = 200;

    /// <summary>Processor time that no forecast of the fast engine may take, in a search of its own.</summary>
    private static readonly TimeSpan Slow = TimeSpan.FromSeconds(6);

    [Fact]
    public void Every_recipe_that_the_checks_let_through_has_a_sound_forecast()
    {
        int wanted = Setting("COILWRIGHT_RECIPES") ?? Usual,
            first = Setting("COILWRIGHT_RECIPES_FROM") ?? 0;
        Dictionary<string, (int Count, int Seed)> faults = [];
        for (int seed = first; seed < first + wanted; seed++)
        {
            TimeSpan before = Environment.CpuUsage.TotalTime;
            IEnumerable<string> found = ForecastSoundness.FaultsOf(new RandomRecipes(seed).Next(), TestContext.Current.CancellationToken);
            TimeSpan took = Environment.CpuUsage.TotalTime - before;
            if (wanted > Usual && took > Slow) // alone in its process
            {
                found = [.. found, "slow"];
            }

            foreach (string fault in found)
            {
                faults[fault] = (faults.GetValueOrDefault(fault).Count + 1, seed);
            }
        }

        Assert.True(
            faults.Count == 0,
            string.Join(
                '\n',
                faults
                    .OrderByDescending(fault => fault.Value.Count)
                    .Select(fault => $"{fault.Value.Count} × {fault.Key}, last with seed {fault.Value.Seed}")
            )
        );
    }

    private static int? Setting(string name) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out int value) ? value : null;

    [Fact]
    public void A_long_screw_close_to_bars_is_cut_finely_enough_to_be_passive()
    {
        string json = LongScrew("57 mm");
        Recipe recipe = RecipeReader.Read(json).Value!;
        Assert.Empty(ForecastSoundness.FaultsOf(recipe, TestContext.Current.CancellationToken));
        PickupForecast fast = Forecaster
            .Predict(RecipeModelBuilder.ToModel(recipe), null, cancel: TestContext.Current.CancellationToken)
            .Pickup;
        PickupForecast accurate = Forecaster
            .Predict(
                RecipeModelBuilder.ToModel(recipe),
                null,
                new ForecastOptions { Engine = new AccurateFieldEngine() },
                TestContext.Current.CancellationToken
            )
            .Pickup;
        Assert.InRange(accurate.Inductance.Value, fast.Inductance.Estimate.Low, fast.Inductance.Estimate.High);
        Assert.InRange(fast.Inductance.Value / accurate.Inductance.Value, 0.96, 1.04); // stated errors of both, with bars beside rods
    }

    [Theory] // the ends of what is allowed, from where a count scatters beyond
    [InlineData(1)]
    [InlineData(100_000)]
    public void A_run_of_the_fewest_and_of_the_most_turns_is_scattered(int turns)
    {
        Recipe recipe = RecipeReader.Read(Turns(turns)).Value!;
        RunSpread run = RunForecaster.Spread(
            RecipeModelBuilder.ToModel(recipe),
            load: null,
            new Dictionary<string, SpreadTarget>(),
            samples: 200,
            seed: 1,
            byTime: true,
            cancel: TestContext.Current.CancellationToken
        );
        Assert.NotEmpty(run.Quantities);
    }

    [Theory]
    [InlineData("\"windingHeight\": \"6 mm\"", "\"windingHeight\": \"0.5 mm\"", "coils[0].winding.turns")]
    [InlineData("\"AWG 42\"", "\"AWG 34\"", "coils[0].winding.turns")]
    [InlineData("\"tension\": \"14 gf\"", "\"tension\": \"900 gf\"", "coils[0].winding.tension")]
    [InlineData("\"turns\"", "\"build\": \"0.1 mm\", \"turns\"", null)]
    [InlineData("\"gauge\"", "\"bareDiameter\": \"0.3 mm\", \"gauge\"", "coils[0].wire.bareDiameter")]
    public void What_makes_no_winding_is_a_problem_with_its_field(string part, string instead, string? field)
    {
        IReadOnlyList<string> fields =
        [
            .. RecipeReader
                .Read(
                    LongScrew("30 mm")
                        .Replace("\"turns\": 9400", "\"turns\": 90000", StringComparison.Ordinal)
                        .Replace(part, instead, StringComparison.Ordinal)
                )
                .Problems.Select(problem => problem.Field),
        ];
        Assert.True(field is null ? fields.Count == 0 : fields.Contains(field), string.Join(", ", fields));
    }

    [Fact]
    public void More_poles_than_a_forecast_holds_are_a_problem()
    {
        string pole =
            """{ "shape": "rod", "material": "alnico-5", "diameter": "1 mm", "length": "17 mm", "count": """
            + """36, "spacing": "1.2 mm", "top": "9 mm" }""";
        string json = Turns(5000)
            .Replace("\"winding\"", $"\"poles\": [ {pole}, {pole}, {pole}, {pole} ], \"winding\"", StringComparison.Ordinal);
        Coilwright.Workshop.Entry.Problem problem = Assert.Single(RecipeReader.Read(json).Problems);
        Assert.Equal(("coils", "144 poles", "1 to 120 in all coils"), (problem.Field, problem.Understood, problem.Allowed));
    }

    private static string Turns(int turns) =>
        $$"""
            { "format": "coilwright.recipe/1", "name": "Ends", "coils": [ { "name": "main",
              "bobbin": { "coreLength": "61 mm", "coreWidth": "6.2 mm", "windingHeight": "11 mm" },
              "wire": { "gauge": "AWG 46" }, "winding": { "turns": {{turns}} } } ] }
            """;

    /// <summary>An invented recipe: six steel screws through a wide flat coil, 0.25 mm from two bars.</summary>
    private static string LongScrew(string length) =>
        $$"""
            { "format": "coilwright.recipe/1", "name": "Long screw", "strings": { "count": 6, "spacing": "10.2 mm", "clearance": "3 mm" },
              "coils": [ { "name": "main",
                "bobbin": { "coreLength": "62 mm", "coreWidth": "8 mm", "endRadius": "4 mm", "windingHeight": "6 mm", "maxBuild": "11 mm" },
                "wire": { "gauge": "AWG 42", "insulation": "plain-enamel", "build": "single" },
                "winding": { "turns": 9400, "lay": "scattered", "pitch": "0.17 mm", "tension": "14 gf" },
                "poles": [ { "shape": "screw", "material": "low-carbon-steel", "diameter": "3.5 mm", "length": "{{length}}",
                  "headDiameter": "5.4 mm", "headHeight": "1.6 mm", "count": 6, "spacing": "10.2 mm", "top": "5.4 mm" } ] } ],
              "magnets": [
                { "shape": "bar", "material": "alnico-5", "size": ["62 mm", "6 mm", "3.2 mm"],
                  "centre": ["0 mm", "-5 mm", "-6.6 mm"], "magnetised": "y" },
                { "shape": "bar", "material": "alnico-5", "size": ["62 mm", "6 mm", "3.2 mm"],
                  "centre": ["0 mm", "5 mm", "-6.6 mm"], "magnetised": "-y" } ] }
            """;
}
