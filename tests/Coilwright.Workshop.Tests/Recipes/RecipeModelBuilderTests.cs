using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Recipes;

public class RecipeModelBuilderTests
{
    [Theory]
    [MemberData(nameof(DemoFiles.Recipes), MemberType = typeof(DemoFiles))]
    public void Every_demo_recipe_becomes_a_model_whose_winding_fits(string name)
    {
        PickupModel model = Model(DemoFiles.Recipe(name));
        Assert.All(model.Coils, coil =>
        {
            double wireM = coil.Wire.OverallDiameterM.Value;
            double fill = coil.Winding.Turns * Math.PI / 4 * wireM * wireM / (coil.Bobbin.WindingHeightM * coil.Bobbin.MaxBuildM!.Value);
            Assert.InRange(fill, 0.3, 0.75);
            Assert.True(coil.Wire.BareDiameterM.Low < coil.Wire.BareDiameterM.Value && coil.Wire.BareDiameterM.High < wireM);
        });
    }

    [Fact]
    public void North_up_poles_have_a_positive_source_and_south_up_a_negative_one()
    {
        PickupModel bass = Model(DemoFiles.Recipe("tideway-bass"));
        Assert.True(bass.Coils[0].Poles[0].PolarisationT.Low > 0);
        Assert.True(bass.Coils[1].Poles[0].PolarisationT.High < 0);
        Assert.Equal(-bass.Coils[0].Poles[0].PolarisationT.Low, bass.Coils[1].Poles[0].PolarisationT.High);
        Assert.Equal(WindingDirection.CounterClockwise, bass.Coils[0].Winding.Direction);
        Assert.Equal(WindingDirection.Clockwise, bass.Coils[1].Winding.Direction);
        Assert.Equal(new Vector3M(-0.019, 0.014, 0), bass.Coils[0].Position);
    }

    [Fact]
    public void A_twin_has_its_magnet_and_keeper_as_bars_and_its_screws_with_heads()
    {
        PickupModel twin = Model(DemoFiles.Recipe("breakwater-twin"));
        Assert.Equal(2, twin.Bars.Count);
        Assert.True(twin.Bars[0].PolarisationT.YM > 0);
        Assert.Equal(default, twin.Bars[1].PolarisationT);
        PoleModel screw = twin.Coils[1].Poles[0];
        Assert.Equal((PoleShape.Screw, 0.0052, 0.0016), (screw.Shape, screw.HeadDiameterM, screw.HeadHeightM));
        Assert.True(screw.PolarisationT.IsExact);
        Assert.Equal(Connection.Series, twin.Connection);
        Assert.Equal(2.3, twin.GapPermittivity);
        Assert.Equal(20, twin.TemperatureC);
    }

    [Fact]
    public void A_blade_has_width_along_the_strings_row_and_thickness_across_it()
    {
        PoleModel blade = Assert.Single(Model(DemoFiles.Recipe("keel-blade")).Coils[0].Poles);
        Assert.Equal((0.063, 0.003, 0.014), (blade.WidthM, blade.DiameterM, blade.LengthM));
        Assert.Equal([0], blade.PositionsM);
    }

    [Fact]
    public void What_was_measured_or_stated_overrides_the_tables()
    {
        string json = DemoFiles
            .Recipe("harbour-bridge")
            .Replace(
                "\"build\": \"single\"",
                "\"build\": \"single\", \"bareDiameter\": \"2.45 thou\", \"overallDiameter\": \"0.070 mm\", "
                    + "\"resistancePerLength\": \"5.544 Ω/m\"",
                StringComparison.Ordinal
            )
            .Replace(
                "\"turns\": 8000",
                "\"turns\": 8000, \"build\": \"4.1 mm\", \"capacitance\": \"110 pF\", \"stretch\": \"1 %\"",
                StringComparison.Ordinal
            )
            .Replace(
                "\"magnetised\": \"north-up\"",
                "\"magnetised\": \"south-up\", \"relativePermeability\": 4.5, \"conductivity\": \"0 S/m\", \"polarisation\": \"0.28 T\"",
                StringComparison.Ordinal
            );
        CoilModel coil = Model(json).Coils[0];
        Assert.Equal(2.45 * 25.4e-6, coil.Wire.BareDiameterM.Value, 1e-15);
        Assert.Equal(Basis.Measured, coil.Wire.BareDiameterM.Basis);
        Assert.Equal(0.070e-3, coil.Wire.OverallDiameterM.Value);
        Assert.Equal(5.544, coil.Wire.MeasuredOhmPerM!.Value.Value);
        Assert.Equal((0.0041, 110e-12, 0.01), (coil.Winding.MeasuredBuildM, coil.Winding.MeasuredCapacitanceF, coil.Winding.Stretch));
        PoleModel pole = coil.Poles[0];
        Assert.Equal((4.5, 0.0, -0.28), (pole.RelativePermeability.Value, pole.ConductivitySPerM.Value, pole.PolarisationT.Value));
    }

    [Theory]
    [InlineData("AWG 42", 63.5)]
    [InlineData("42 AWG", 63.5)]
    [InlineData("awg 42.5", 60.96)]
    [InlineData("0.063 mm", 63)]
    public void Gauges_are_known_by_their_usual_names(string gauge, double bareUm)
    {
        CoilModel coil = Model(DemoFiles.Recipe("harbour-bridge").Replace("AWG 42", gauge, StringComparison.Ordinal)).Coils[0];
        Assert.Equal(bareUm, coil.Wire.BareDiameterM.Value * 1e6, 1e-9);
    }

    [Theory]
    [InlineData("AWG 420", "AWG 50")]
    [InlineData("AWG 42.3", "AWG 42.5")]
    [InlineData("0.064 mm", "0.063 mm")]
    [InlineData("AWQ 42", "AWG 42")]
    public void An_unknown_gauge_is_refused_with_the_nearest(string gauge, string nearest)
    {
        Problem problem = Assert.Single(
            RecipeReader.Read(DemoFiles.Recipe("harbour-bridge").Replace("AWG 42", gauge, StringComparison.Ordinal)).Problems
        );
        Assert.Equal("coils[0].wire.gauge", problem.Field);
        Assert.Contains(nearest, problem.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// Overall diameters of 0.063 mm: grade 1 0.069–0.076, grade 2 0.077–0.083 mm (IEC 60317-0-1 with a maker's minima, read); grades
    /// differ, so none may stand in for another.
    /// </summary>
    [Theory]
    [InlineData("\"grade\": 1", 0.069, 0.076)]
    [InlineData("\"grade\": 2", 0.077, 0.083)]
    [InlineData("\"build\": \"single\"", 0.069, 0.076)]
    [InlineData("\"build\": \"heavy\"", 0.077, 0.083)]
    public void A_metric_size_takes_the_diameter_of_its_own_grade(string film, double lowMm, double highMm)
    {
        WireModel wire = Model(DemoFiles.Recipe("lantern-seven").Replace("\"grade\": 1", film, StringComparison.Ordinal)).Coils[0].Wire;
        Assert.Equal(lowMm, wire.OverallDiameterM.Low * 1000, 1e-9);
        Assert.Equal(highMm, wire.OverallDiameterM.High * 1000, 1e-9);
    }

    [Fact]
    public void Grade_three_is_thicker_than_grade_two()
    {
        double Overall(int grade) =>
            Model(DemoFiles.Recipe("lantern-seven").Replace("\"grade\": 1", $"\"grade\": {grade}", StringComparison.Ordinal))
                .Coils[0]
                .Wire.OverallDiameterM.Value;
        Assert.True(Overall(3) > Overall(2) && Overall(2) > Overall(1));
    }

    [Theory]
    [InlineData("\"build\": \"single\"", "\"grade\": 1", "coils[0].wire.grade")]
    [InlineData("AWG 42\"", "AWG 42.5\", \"build\": \"quad\"", "coils[0].wire.build")]
    public void A_film_that_the_size_is_not_made_with_is_refused(string right, string wrong, string path)
    {
        string json = DemoFiles.Recipe("harbour-bridge").Replace(right, wrong, StringComparison.Ordinal);
        json = path.EndsWith("build", StringComparison.Ordinal)
            ? json.Replace(", \"build\": \"single\"", "", StringComparison.Ordinal)
            : json;
        Problem problem = Assert.Single(RecipeReader.Read(json).Problems);
        Assert.Equal(path, problem.Field);
        Assert.Contains("single", problem.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Poles_of_air_are_left_out()
    {
        string json = DemoFiles.Recipe("harbour-bridge").Replace("\"alnico-5\"", "\"air\"", StringComparison.Ordinal);
        Assert.Empty(Model(json).Coils[0].Poles);
    }

    private static PickupModel Model(string json)
    {
        ReadOutcome<Recipe> outcome = RecipeReader.Read(json);
        Assert.True(outcome.Ok, string.Join("\n", outcome.Problems));
        return RecipeModelBuilder.ToModel(outcome.Value!);
    }
}
