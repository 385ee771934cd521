using Coilwright.Physics.Electrostatics;

namespace Coilwright.Physics.Tests.Electrostatics;

public sealed class LeadCapacitanceTests
{
    private static readonly double[] s_one = [1];
    private static readonly double[] s_halves = [0.5, 0.5];

    [Fact] // 0.3 m of 120 pF/m
    public void A_braided_conductor_is_length_times_capacitance_per_length()
    {
        LeadModel leads = new()
        {
            Construction = LeadConstruction.SingleBraided,
            LengthM = 0.3,
            ToScreenFPerM = 120e-12,
        };
        Estimate found = LeadCapacitance.AtTerminals(leads, Connection.Single, s_one, screened: true);
        Assert.Equal(36e-12, found.Value, 1e-18);
        Assert.True(found.IsExact);
    }

    [Fact] // by hand: 0.3 × (120 × (1 + 2/4) + 60 × 2/3 × (1 + 4/4)) pF: hot wire and two ends of the link at half the voltage
    public void Four_conductors_carry_the_coils_link_at_half_the_voltage()
    {
        LeadModel leads = new()
        {
            Construction = LeadConstruction.FourConductorScreened,
            LengthM = 0.3,
            ToScreenFPerM = 120e-12,
            BetweenFPerM = 60e-12,
        };
        Assert.Equal(78e-12, LeadCapacitance.AtTerminals(leads, Connection.Series, s_halves, screened: true).Value, 1e-18);
    }

    [Fact] // by hand: 0.5 × (100 + 40) pF
    public void Two_conductors_count_to_the_screen_and_to_each_other()
    {
        LeadModel leads = new()
        {
            Construction = LeadConstruction.TwoConductorScreened,
            LengthM = 0.5,
            ToScreenFPerM = 100e-12,
            BetweenFPerM = 40e-12,
        };
        Assert.Equal(70e-12, LeadCapacitance.AtTerminals(leads, Connection.Single, s_one, screened: true).Value, 1e-18);
    }

    [Fact]
    public void Leads_that_nobody_names_are_assumed_with_the_interval_of_their_kind()
    {
        Estimate pair = LeadCapacitance.AtTerminals(null, Connection.Single, s_one, screened: false),
            screened = LeadCapacitance.AtTerminals(null, Connection.Series, s_halves, screened: true);
        Assert.Equal((Basis.Assumed, Basis.Assumed), (pair.Basis, screened.Basis));
        Assert.True(pair.High / pair.Low > 4 && screened.High / screened.Low > 4);
        Assert.True(screened.Value > 2 * pair.Value);
    }

    [Theory] // π·ε0·ε/acosh(s/d) [Smythe]: wires of 0.6 mm, 1.4 mm apart
    [InlineData(1.1)]
    [InlineData(3)]
    public void The_usual_pair_holds_two_round_wires_in_thin_and_in_dense_insulation(double permittivity)
    {
        double farad = Math.PI * 8.8541878128e-12 * permittivity / Math.Acosh(1.4 / 0.6);
        Assert.InRange(farad, LeadCapacitance.PairFPerM.Low, LeadCapacitance.PairFPerM.High);
    }

    [Theory] // 2·π·ε0·ε/ln(D/d) [Smythe]: a strand of 0.8 mm in a braid of 2 mm
    [InlineData(2.5)]
    [InlineData(4)]
    public void The_usual_braid_holds_a_coaxial_line_of_its_size(double permittivity)
    {
        double farad = 2 * Math.PI * 8.8541878128e-12 * permittivity / Math.Log(2 / 0.8);
        Assert.InRange(farad, LeadCapacitance.BraidedFPerM.Low, LeadCapacitance.BraidedFPerM.High);
    }
}
