using System.Globalization;
using System.Text.Json;

namespace Coilwright.Tests.Commands;

public sealed class GaugeTests
{
    [Fact]
    public async Task Two_people_on_three_coils_give_a_study_that_fits_its_schema()
    {
        using JsonDocument study = await Run("part,person,value [kΩ]\na,1,6.10\na,1,6.11\na,2,6.12\na,2,6.11\nb,1,6.20\nb,1,6.21\nb,2,6.22\nb,2,6.20\nc,1,6.35\nc,1,6.34\nc,2,6.36\nc,2,6.35\n", 0);
        Assert.Equal(0.07 / 6 / 1.1284, study.RootElement.GetProperty("averageAndRange").GetProperty("repeatability").GetDouble(), 1e-6); // five ranges of 0.01 and one of 0.02 over d2
        Assert.True(study.RootElement.GetProperty("anova").GetProperty("categories").GetInt32() >= 5);
    }

    [Fact]
    public async Task A_meter_that_reads_high_by_more_than_it_scatters_shows_its_bias()
    {
        using JsonDocument study = await Run("value [Ω]\n" + string.Join('\n', Enumerable.Range(0, 20).Select(n => (1000.5 + 0.1 * (n % 3 - 1)).ToString(CultureInfo.InvariantCulture))), 0, "--reference", "1000", "--tolerance", "40");
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

    private static async Task<JsonDocument> Run(string table, int exit, params string[] more)
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(["gauge", folder.Write("readings.csv", table), .. more, "--json"]);
        Assert.Equal((exit, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("gauge.json", run.Output));
        return JsonDocument.Parse(run.Output);
    }
}
