using System.Globalization;
using System.Text.Json;

namespace Coilwright.Tests.Commands;

public sealed class GaugeTests
{
    [Fact]
    public async Task Two_people_on_three_coils_give_a_study_that_fits_its_schema()
    {
        using JsonDocument study = await Run(
            "part,person,value [kΩ]\na,1,6.10\na,1,6.11\na,2,6.12\na,2,6.11\nb,1,6.20\nb,1,6.21\nb,2,6.22\nb,2,6.20\n"
                + "c,1,6.35\nc,1,6.34\nc,2,6.36\nc,2,6.35\n",
            0
        );
        // five ranges of 0.01 and one of 0.02 over d2
        Assert.Equal(0.07 / 6 / 1.1284, study.RootElement.GetProperty("averageAndRange").GetProperty("repeatability").GetDouble(), 1e-6);
        Assert.True(study.RootElement.GetProperty("anova").GetProperty("categories").GetInt32() >= 5);
    }

    [Fact]
    public async Task A_meter_that_reads_high_by_more_than_it_scatters_shows_its_bias()
    {
        using JsonDocument study = await Run(
            "value [Ω]\n"
                + string.Join(
                    '\n',
                    Enumerable.Range(0, 20).Select(n => (1000.5 + 0.1 * (n % 3 - 1)).ToString(CultureInfo.InvariantCulture))
                ),
            0,
            "--reference",
            "1000",
            "--tolerance",
            "40"
        );
        JsonElement one = study.RootElement.GetProperty("typeOne");
        Assert.Equal(0.5, one.GetProperty("bias").GetDouble(), 0.01);
        Assert.True(one.GetProperty("biasLow").GetDouble() > 0.4);
        Assert.True(one.GetProperty("cgk").GetDouble() < one.GetProperty("cg").GetDouble());
    }

    [Fact]
    public async Task A_table_without_a_study_is_refused()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of("gauge", folder.Write("readings.csv", "part,person,value\na,1,6.1\nb,1,x\n"));
        Assert.Equal(2, run.Exit);
        Assert.Contains("line 3, value", run.Error, StringComparison.Ordinal);
    }

    // AIAG, Measurement Systems Analysis, linearity example: five parts, twelve readings each. The readings are from memory; that they give
    // its printed slope and intercept to six digits says they are right.
    private static readonly (double Reference, double[] Readings)[] s_linearity =
    [
        (2, [2.7, 2.5, 2.4, 2.5, 2.7, 2.3, 2.5, 2.5, 2.4, 2.4, 2.6, 2.4]),
        (4, [5.1, 3.9, 4.2, 5.0, 3.8, 3.9, 3.9, 3.9, 3.9, 4.0, 4.1, 3.8]),
        (6, [5.8, 5.7, 5.9, 5.9, 6.0, 6.1, 6.0, 6.1, 6.4, 6.3, 6.0, 6.1]),
        (8, [7.6, 7.7, 7.8, 7.7, 7.8, 7.8, 7.8, 7.7, 7.8, 7.5, 7.6, 7.7]),
        (10, [9.1, 9.3, 9.5, 9.3, 9.4, 9.5, 9.5, 9.5, 9.6, 9.2, 9.3, 9.4]),
    ];

    [Theory]
    [InlineData(null, 1)]
    [InlineData("4", 1)] // 0.58 at the far end is 14 % of it
    [InlineData("10", 0)] // and 6 % of this
    public async Task A_meter_whose_bias_changes_along_its_range_is_fit_only_for_a_tolerance_that_is_wide_enough(
        string? tolerance,
        int exit
    )
    {
        string table =
            "part,value,reference\n"
            + string.Join(
                '\n',
                s_linearity.SelectMany(part =>
                    part.Readings.Select(value => string.Create(CultureInfo.InvariantCulture, $"{part.Reference},{value},{part.Reference}"))
                )
            );
        using JsonDocument study = await Run(table, exit, tolerance is null ? [] : ["--tolerance", tolerance]);
        JsonElement line = study.RootElement.GetProperty("linearity");
        Assert.Equal(-0.131667, line.GetProperty("slope").GetDouble(), 5e-7);
        Assert.Equal(0.736667, line.GetProperty("intercept").GetDouble(), 5e-7);
        Assert.Equal(0.011, line.GetProperty("slopeError").GetDouble(), 5e-4);
        Assert.True(line.GetProperty("slopeChance").GetDouble() < 1e-9);
        Assert.Equal(10, line.GetProperty("worstBiasAt").GetDouble());
        Assert.Equal(exit, study.RootElement.GetProperty("faults").GetArrayLength());
    }

    [Fact]
    public async Task A_meter_that_reads_off_by_the_same_everywhere_is_not_called_fit_without_a_tolerance()
    {
        using JsonDocument study = await Run("value,reference\n1.11,1\n1.09,1\n2.11,2\n2.09,2\n3.10,3\n3.11,3\n", 1);
        Assert.True(study.RootElement.GetProperty("linearity").GetProperty("slopeChance").GetDouble() > 0.05);
        Assert.Contains("reads off everywhere", study.RootElement.GetProperty("faults")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_meter_whose_bias_is_no_more_than_chance_is_fit()
    {
        using JsonDocument study = await Run("value,reference\n1.01,1\n0.99,1\n2.02,2\n1.97,2\n3.01,3\n3.00,3\n", 0);
        Assert.Empty(study.RootElement.GetProperty("faults").EnumerateArray());
    }

    private static async Task<JsonDocument> Run(string table, int exit, params string[] more)
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(["gauge", folder.Write("readings.csv", table), .. more, "--json"]);
        Assert.Equal((exit, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("gauge.json", run.Output));
        return JsonDocument.Parse(run.Output);
    }
}
