using Coilwright.Physics;
using Coilwright.Physics.Electrostatics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>What a recipe says for the capacitance outside the winding: leads, hot end, walls, tape, grounding.</summary>
public sealed class LeadReaderTests
{
    private const string Leads = """
        "leads": { "construction": "two-conductor-screened", "length": "0.3 m", "toScreen": "120 pF/m", "between": "60 pF/m" }
        """;

    [Fact]
    public void All_of_it_reaches_the_model()
    {
        string json = With(Leads)
            .Replace(
                "\"material\": \"vulcanised-fibre\"",
                "\"material\": \"abs\", \"wall\": \"0.7 mm\", \"flange\": \"2 mm\"",
                StringComparison.Ordinal
            )
            .Replace("\"magnetised\": \"north-up\"", "\"magnetised\": \"north-up\", \"grounded\": true", StringComparison.Ordinal)
            .Replace(
                "\"position\": { \"y\": \"0 mm\" }",
                "\"hot\": \"start\", \"tape\": { \"thickness\": \"0.1 mm\", \"material\": \"nylon\" }",
                StringComparison.Ordinal
            )
            .Replace(
                "\"metalwork\": []",
                "\"metalwork\": [ { \"shape\": \"plate\", \"material\": \"brass\", \"thickness\": \"1 mm\", \"length\": \"70 mm\", "
                    + "\"width\": \"16 mm\", "
                    + "\"top\": \"-9.5 mm\", \"bottom\": \"-10.5 mm\", \"grounded\": false } ]",
                StringComparison.Ordinal
            );
        PickupModel model = RecipeModelBuilder.ToModel(RecipeReader.Read(json).Value!);
        CoilModel coil = model.Coils[0];
        Assert.Equal(
            new LeadModel
            {
                Construction = LeadConstruction.TwoConductorScreened,
                LengthM = 0.3,
                ToScreenFPerM = 120e-12,
                BetweenFPerM = 60e-12,
            },
            model.Leads
        );
        Assert.Equal((CoilEnd.Start, 1e-4, 4.5), (coil.Hot!.Value, coil.TapeM, coil.TapePermittivity!.Value.Value));
        Assert.Equal((0.0007, 0.002, 2.87), (coil.Bobbin.WallM!.Value, coil.Bobbin.FlangeM!.Value, coil.Bobbin.Permittivity!.Value.Value));
        Assert.True(coil.Poles[0].Grounded);
        Assert.False(model.Sheets[0].Grounded);
    }

    [Theory]
    [InlineData("\"length\": \"0.3 m\"", "\"length\": \"0 m\"", "leads.length")]
    [InlineData("\"length\": \"0.3 m\"", "\"length\": 0.3", "leads.length")]
    [InlineData("\"length\": \"0.3 m\"", "\"length\": \"-1 m\"", "leads.length")]
    [InlineData("\"length\"", "\"lenght\"", "leads.lenght")]
    [InlineData("\"120 pF/m\"", "\"120 pF\"", "leads.toScreen")]
    [InlineData("\"120 pF/m\"", "\"0 pF/m\"", "leads.toScreen")]
    [InlineData("two-conductor-screened", "two-conductors", "leads.construction")]
    [InlineData("\"construction\": \"two-conductor-screened\", ", "", "leads.construction")]
    [InlineData("two-conductor-screened", "unscreened-pair", "leads.toScreen")]
    [InlineData("two-conductor-screened", "single-braided", "leads.between")]
    public void A_bad_lead_is_named(string good, string bad, string path)
    {
        Problem problem = Assert.Single(RecipeReader.Read(With(Leads.Replace(good, bad, StringComparison.Ordinal))).Problems);
        Assert.Equal(path, problem.Field);
    }

    [Theory]
    [InlineData("\"magnetised\": \"north-up\"", "\"magnetised\": \"north-up\", \"grounded\": \"yes\"", "coils[0].poles[0].grounded")]
    [InlineData("\"endRadius\"", "\"wall\": \"3.2 mm\", \"endRadius\"", "coils[0].bobbin.wall")]
    [InlineData("\"endRadius\"", "\"flange\": \"0 mm\", \"endRadius\"", "coils[0].bobbin.flange")]
    [InlineData("\"poles\"", "\"hot\": \"outside\", \"poles\"", "coils[0].hot")]
    [InlineData("\"poles\"", "\"tape\": { \"material\": \"nylon\" }, \"poles\"", "coils[0].tape.thickness")]
    [InlineData("\"poles\"", "\"tape\": { \"thickness\": \"0.1 mm\", \"material\": \"brass\" }, \"poles\"", "coils[0].tape.material")]
    public void Bad_walls_tapes_ends_and_grounding_are_named(string good, string bad, string path)
    {
        string json = DemoFiles.Recipe("harbour-bridge").Replace(good, bad, StringComparison.Ordinal);
        Assert.Equal(path, Assert.Single(RecipeReader.Read(json).Problems).Field);
    }

    private static string With(string leads) =>
        DemoFiles.Recipe("harbour-bridge").Replace("\"potting\"", leads.Trim() + ", \"potting\"", StringComparison.Ordinal);
}
