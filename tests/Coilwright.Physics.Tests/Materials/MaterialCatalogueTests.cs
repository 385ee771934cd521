using Coilwright.Physics.Materials;
using Coilwright.Physics.Tests.BoundaryElements;

namespace Coilwright.Physics.Tests.Materials;

public sealed class MaterialCatalogueTests
{
    // [Alnico5] alnico 0.47, [RareEarth] neodymium 1.6, samarium-cobalt 0.86 µΩ·m; from memory: the metals.
    [Theory]
    [InlineData("alnico-5", 0.47e-6)]
    [InlineData("alnico-8", 0.47e-6)]
    [InlineData("neodymium", 1.6e-6)]
    [InlineData("samarium-cobalt", 0.86e-6)]
    [InlineData("nickel-silver", 0.29e-6)]
    [InlineData("brass", 0.062e-6)]
    [InlineData("stainless-steel", 0.72e-6)]
    [InlineData("low-carbon-steel", 0.16e-6)]
    [InlineData("copper", 1.7241e-8)]
    public void Resistivities_are_the_published_ones(string key, double ohmM) =>
        Assert.Equal(1, ohmM * MaterialCatalogue.Find(key)!.ConductivitySPerM.Estimate.Value, 1e-4);

    // From memory, two values each for 2, 3 and 4 which disagree; 5 and 8 read as 3.6 [Alnico5], recalled as 4.3 and 2.0.
    [Theory]
    [InlineData("alnico-2", 6.4, 6.0)]
    [InlineData("alnico-3", 6.5, 6.4)]
    [InlineData("alnico-4", 4.1, 5.8)]
    [InlineData("alnico-5", 3.6, 4.3)]
    [InlineData("alnico-8", 3.6, 2.0)]
    public void Where_sources_disagree_the_interval_holds_them_all(string key, double one, double other)
    {
        Estimate permeability = MaterialCatalogue.Find(key)!.RelativePermeability.Estimate;
        Assert.InRange(one, permeability.Low, permeability.High);
        Assert.InRange(other, permeability.Low, permeability.High);
    }

    // The list of [Gap].
    [Theory]
    [InlineData("abs", 2.87)]
    [InlineData("acetal", 3.6)]
    [InlineData("nylon", 4.5)]
    [InlineData("phenolic", 4.9)]
    [InlineData("epoxy", 3.6)]
    [InlineData("air", 1)]
    public void Permittivities_are_the_published_ones(string key, double value) =>
        Assert.Equal(value, MaterialCatalogue.Find(key)!.RelativePermittivity!.Estimate.Value, 1e-9);

    [Fact]
    public void Every_figure_lies_in_its_interval_and_says_where_it_comes_from() => Assert.All(MaterialCatalogue.All, material =>
        {
            MaterialFigure?[] figures =
            [
                material.RelativePermeability,
                material.ConductivitySPerM,
                material.WorkingPolarisationT,
                material.RelativePermittivity,
            ];
            Assert.All(figures.OfType<MaterialFigure>(), figure =>
            {
                Assert.InRange(figure.Estimate.Value, figure.Estimate.Low, figure.Estimate.High);
                Assert.Contains(figure.Standing, new[] { "read", "memory", "assumed" });
                Assert.NotEqual("", figure.Source);
            });
            Assert.True(material.RelativePermeability.Estimate.Low >= 1, material.Key);
        });

    // Read: remanence 1.25–1.3 T of cast alnico 5; a rod shows about a quarter of what the axial formula makes of it (95 mT against 380
    // mT).
    [Fact]
    public void An_alnico_rod_shows_a_quarter_of_what_its_remanence_would()
    {
        Material alnico = MaterialCatalogue.Find("alnico-5")!;
        PoleModel rod = FieldCases.Rods([0], alnico.RelativePermeability.Estimate.Value, radius: 0.002375, length: 0.0165) with
        {
            PolarisationT = alnico.WorkingPolarisationT!.Estimate,
        };
        double shown = FieldCases
            .Accurate.Solve(FieldCases.One(FieldCases.Coil(0.02975, rod)), TestContext.Current.CancellationToken)
            .Map.MagnetFluxDensityT(new Vector3M(0, 0, 0.010))
            .ZM;
        double axial =
            1.25 / 2 * (0.0175 / Math.Sqrt(0.0175 * 0.0175 + 0.002375 * 0.002375) - 0.001 / Math.Sqrt(0.001 * 0.001 + 0.002375 * 0.002375));
        Assert.InRange(shown / axial, 1 / 6.0, 1 / 3.0);
    }

    [Theory]
    [InlineData("alnico5", "alnico-5")]
    [InlineData("nickle-silver", "nickel-silver")]
    [InlineData("steel", "string-steel")]
    public void A_mistyped_name_is_answered_with_the_nearest(string typed, string nearest)
    {
        Assert.Null(MaterialCatalogue.Find(typed));
        Assert.Contains(nearest, MaterialCatalogue.NearestNames(typed));
    }
}
