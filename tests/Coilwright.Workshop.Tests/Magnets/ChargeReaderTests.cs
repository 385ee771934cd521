using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;

namespace Coilwright.Workshop.Tests.Magnets;

public sealed class ChargeReaderTests
{
    [Theory]
    [InlineData("full", "", "charged full")]
    [InlineData(" FULL ", "", "charged full")]
    [InlineData("100 %", "", "charged full")]
    [InlineData("80%", "", "knocked down to 80 % of full")]
    [InlineData("72,5 %", "", "knocked down to 72.5 % of full")]
    [InlineData("900 G", "", "knocked down to 900 G at 1.00 mm")]
    [InlineData("-90 mT", "2", "knocked down to 900 G at 2.00 mm")] // a south pole reads below zero
    public void A_charge_is_understood_as_people_type_it(string typed, string jig, string words)
    {
        List<Problem> problems = [];
        MagnetLevel? level = ChargeReader.Read(new ChargeEntry(typed, jig), problems);
        Assert.Empty(problems);
        Assert.Equal(words, level!.Done);
    }

    [Theory]
    [InlineData("80", "", "", "charge")] // % or gauss?
    [InlineData("140 %", "", "", "charge")]
    [InlineData("0 %", "", "", "charge")]
    [InlineData("30 kG", "", "", "charge")]
    [InlineData("strong", "", "", "charge")]
    [InlineData("", "", "coil charger 2", "charge")] // with what, but to what?
    [InlineData("900 G", "9 cm", "", "jig")]
    [InlineData("nothing", "far", "", "charge,jig")]
    public void What_is_wrong_is_named_with_what_is_allowed(string typed, string jig, string charger, string fields)
    {
        List<Problem> problems = [];
        Assert.Null(ChargeReader.Read(new ChargeEntry(typed, jig, charger), problems) is { } level && problems.Count == 0 ? level : null);
        Assert.Equal(fields.Split(','), problems.Select(problem => problem.Field).Order());
        Assert.All(problems, problem => Assert.NotEmpty(problem.Allowed!));
    }

    [Fact]
    public void Only_levels_told_alike_are_held_against_each_other()
    {
        MagnetLevel share = new(0.8),
            near = new(null, 0.09, 1e-3),
            far = new(null, 0.09, 2e-3);
        Assert.True(share.IsLike(MagnetLevel.Full));
        Assert.False(share.IsLike(near));
        Assert.False(near.IsLike(far)); // the probe stood elsewhere
        Assert.Equal(-0.2, share.Above(MagnetLevel.Full), 12);
        Assert.Throws<ArgumentException>(() => near.Above(share));
    }
}
