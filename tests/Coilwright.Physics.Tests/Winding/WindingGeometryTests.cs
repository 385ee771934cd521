using Coilwright.Physics.Tests.Wire;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Physics.Tests.Winding;

public sealed class WindingGeometryTests
{
    private const double BareM = 63.5e-6;
    private const double OverallM = 71e-6;

    private static readonly Bobbin Narrow = new()
    {
        CoreLengthM = 64e-3,
        CoreWidthM = 6.2e-3,
        EndRadiusM = 3.1e-3,
        WindingHeightM = 11e-3,
        MaxBuildM = 4.3e-3,
    };

    private static readonly Gen<(Bobbin Bobbin, double Turns, double Packing, double OverallM)> Coils =
        from width in Gen.Double[4e-3, 30e-3]
        from extra in Gen.Double[0, 60e-3]
        from corner in Gen.Double[0, 0.5]
        from height in Gen.Double[3e-3, 15e-3]
        from turns in Gen.Int[1, 15000]
        from packing in Gen.Double[0.4, 0.9]
        from overall in Gen.Double[40e-6, 120e-6]
        select (
            new Bobbin
            {
                CoreLengthM = width + extra,
                CoreWidthM = width,
                EndRadiusM = corner * width,
                WindingHeightM = height,
            },
            (double)turns,
            packing,
            overall
        );

    private static WoundCoil Wind(
        Bobbin bobbin,
        double turns,
        double packing = 0.75,
        double overallM = OverallM,
        double? pitchM = null,
        double stretch = 0,
        double? buildM = null
    ) =>
        WindingGeometry.Wind(
            bobbin,
            BareM / OverallM * overallM,
            overallM,
            new WindingModel
            {
                Turns = turns,
                PitchM = pitchM,
                Stretch = stretch,
                MeasuredBuildM = buildM,
            },
            packing,
            CopperWire.OhmPerM(BareM / OverallM * overallM),
            1200
        );

    // Arithmetic: 8,000 and 9,400 turns of 0.071 mm in 11 × 4.3 mm.
    [Theory]
    [InlineData(8000, 0.67)]
    [InlineData(9400, 0.79)]
    public void Fill_is_insulated_section_over_the_window(double turns, double fill) =>
        Assert.Equal(fill, Wind(Narrow, turns).Fill!.Value, 5e-3);

    // Arithmetic: 1,136 m of nominal 42 AWG are 6.18 kΩ. Their 34 g rests on 29.8 mg/m, read from a supplier's half pound of about 25,000
    // ft;
    // the table's single build gives 29.1 mg/m and 33.1 g, and the diameter's limits (±8 %) hold both.
    [Fact]
    public void Eight_thousand_turns_have_the_ohms_and_the_mass_of_1136_metres()
    {
        Bobbin bobbin = Narrow with { CoreLengthM = Narrow.CoreLengthM - (Wind(Narrow, 8000).MeanTurnM - 0.142) / 2 };
        WoundCoil coil = Wind(bobbin, 8000);
        Assert.Equal(1136, coil.WireLengthM, 0.1);
        Assert.Equal(6180, coil.DcResistanceOhm(20), 10.0);
        Assert.Equal(0.0331, 1136 * CopperWire.MassKgPerM(BareM, 71.12e-6), 5e-5);
        Assert.InRange(0.034, 1136 * CopperWire.MassKgPerM(60.96e-6, 66.04e-6), 1136 * CopperWire.MassKgPerM(66.04e-6, 76.2e-6));
    }

    // Read: "around 95" turns a layer; arithmetic: 0.250 in ÷ 0.0026 in ≈ 96. And 58 turns at 0.19 mm in 11 mm.
    [Fact]
    public void Turns_per_layer_are_window_over_diameter_or_pitch()
    {
        Assert.Equal(96, WindingGeometry.TurnsPerLayer(0.250 * 0.0254, 0.0026 * 0.0254, null), 0.5);
        Assert.Equal(58, WindingGeometry.TurnsPerLayer(11e-3, OverallM, 0.19e-3), 0.2);
    }

    // Another method: every turn on its own, one after the other.
    [Fact]
    public void The_closed_form_is_the_sum_over_single_turns()
    {
        foreach ((double turns, int perLayer) in new[] { (1.0, 50), (49, 50), (50, 50), (51, 50), (7013, 58), (8000, 154) })
        {
            const double BuildM = 3.5e-3;
            double layerM = BuildM / (turns / perLayer);
            double sumM = Enumerable.Range(0, (int)turns).Sum(i => Narrow.TurnLengthM((i / perLayer + 0.5) * layerM));
            Assert.Equal(sumM, WindingGeometry.WireLengthM(Narrow, turns, perLayer, BuildM), 1e-9 * sumM);
        }
    }

    // With many layers the sum must go over into N × the turn at half build; the begun last layer is all that parts them.
    [Fact]
    public void Many_layers_approach_the_turn_at_half_build() =>
        Coils.ForAll(c =>
        {
            WoundCoil coil = Wind(c.Bobbin, c.Turns, c.Packing, c.OverallM);
            double middleM = c.Turns * c.Bobbin.TurnLengthM(coil.BuildM / 2);
            double bound = 0.25 * Math.PI * coil.BuildM / coil.Layers * coil.TurnsPerLayer + 1e-9;
            return coil.Layers < 1 || (coil.WireLengthM >= middleM - 1e-9 && coil.WireLengthM <= middleM + bound);
        });

    [Fact]
    public void A_round_coil_is_a_ring_of_its_mean_circumference()
    {
        Bobbin round = new()
        {
            CoreLengthM = 20e-3,
            CoreWidthM = 20e-3,
            EndRadiusM = 10e-3,
            WindingHeightM = 7.1e-3,
        };
        WoundCoil coil = Wind(round, 5000, buildM: 4e-3);
        Assert.Equal(5000 * 2 * Math.PI * 12e-3, coil.WireLengthM, 1e-6);
        Assert.Equal(28e-3, coil.OuterLengthM, 1e-12);
        Assert.Equal(coil.OuterLengthM, coil.OuterWidthM, 1e-12);
    }

    [Fact]
    public void Build_packing_and_fill_belong_together() =>
        Coils.ForAll(c =>
        {
            Bobbin bobbin = c.Bobbin with { MaxBuildM = 5e-3 };
            WoundCoil coil = Wind(bobbin, c.Turns, c.Packing, c.OverallM);
            return Math.Abs(coil.Fill!.Value * 5e-3 - coil.PackingFactor * coil.BuildM) < 1e-12
                && coil.FitsWindow == (coil.BuildM <= 5e-3)
                && coil.PackingFactor <= c.Packing + 1e-12;
        });

    [Fact]
    public void More_turns_a_longer_core_or_looser_packing_mean_more_wire() =>
        Coils.ForAll(c =>
        {
            double lengthM = Wind(c.Bobbin, c.Turns, c.Packing, c.OverallM).WireLengthM;
            return Wind(c.Bobbin, c.Turns + 1, c.Packing, c.OverallM).WireLengthM > lengthM
                && Wind(c.Bobbin with { CoreLengthM = c.Bobbin.CoreLengthM + 1e-3 }, c.Turns, c.Packing, c.OverallM).WireLengthM > lengthM
                && Wind(c.Bobbin, c.Turns, c.Packing * 0.9, c.OverallM).WireLengthM >= lengthM;
        });

    // Arithmetic: a core 2.8 mm longer at equal turns: mean turn 125 → 130.6 mm, +4.5 %.
    [Fact]
    public void A_longer_core_adds_twice_its_growth_to_every_turn()
    {
        Bobbin bobbin = Narrow with { CoreLengthM = Narrow.CoreLengthM - (Wind(Narrow, 5000).MeanTurnM - 0.125) / 2 };
        WoundCoil before = Wind(bobbin, 5000);
        WoundCoil after = Wind(bobbin with { CoreLengthM = bobbin.CoreLengthM + 2.8e-3 }, 5000);
        Assert.Equal(0.1306, after.MeanTurnM, 1e-9);
        Assert.Equal(0.045, after.DcResistanceOhm(20) / before.DcResistanceOhm(20) - 1, 5e-4);
    }

    [Fact]
    public void One_per_cent_stretch_is_one_per_cent_of_resistance_at_fixed_turns_and_less_mass()
    {
        WoundCoil slack = Wind(Narrow, 8000);
        WoundCoil tight = Wind(Narrow, 8000, stretch: 0.01);
        ReferenceRows.Near(1.01, tight.DcResistanceAt20COhm / slack.DcResistanceAt20COhm, 1e-12, "ohms");
        ReferenceRows.Near(1 / 1.01, tight.WireMassKg / slack.WireMassKg, 1e-12, "mass");
        Assert.Equal(slack.WireLengthM, tight.WireLengthM);
    }

    [Fact]
    public void A_measured_build_overrides_the_packing()
    {
        WoundCoil coil = Wind(Narrow, 8000, packing: 0.6, buildM: 3.9e-3);
        Assert.Equal(3.9e-3, coil.BuildM);
        Assert.Equal(8000 * Math.PI / 4 * OverallM * OverallM / (11e-3 * 3.9e-3), coil.PackingFactor, 1e-12);
        Assert.Null(Wind(Narrow with { MaxBuildM = null }, 8000).Fill);
    }
}
