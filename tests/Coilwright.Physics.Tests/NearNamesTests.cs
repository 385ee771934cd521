namespace Coilwright.Physics.Tests;

public sealed class NearNamesTests
{
    private static readonly string[] s_fields = ["coreLength", "coreWidth", "windingHeight", "maxBuild", "turns"];

    // Letters to change, drop or add, counted by hand.
    [Theory]
    [InlineData("", "", 0)]
    [InlineData("", "turns", 5)]
    [InlineData("turns", "", 5)]
    [InlineData("truns", "turns", 2)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("turn", "turns", 1)]
    public void Letters_to_mend_are_counted(string a, string b, int letters) => Assert.Equal(letters, NearNames.Distance(a, b));

    [Theory]
    [InlineData("truns", "turns")]
    [InlineData("CORELENGHT", "coreLength")]
    [InlineData("core-width", "coreWidth")]
    [InlineData("winding height", "windingHeight")]
    [InlineData("build", "maxBuild")]
    public void A_slip_finds_the_name_that_was_meant(string typed, string meant) => Assert.Equal(meant, NearNames.Nearest(typed, s_fields));

    [Theory]
    [InlineData("qqq")]
    [InlineData("")]
    public void Nothing_is_guessed_where_no_letter_agrees(string typed) => Assert.Null(NearNames.Nearest(typed, s_fields));

    [Fact]
    public void Without_names_there_is_no_nearest() => Assert.Null(NearNames.Nearest("turns", []));

    [Fact]
    public void A_name_that_holds_what_was_typed_goes_before_one_with_fewer_letters_to_mend() =>
        Assert.Equal(["low-carbon-steel", "steer"], NearNames.Find("steel", ["steer", "low-carbon-steel"], 2));

    [Fact]
    public void Names_as_near_as_each_other_stand_by_the_alphabet_once_each() =>
        Assert.Equal(["Run-1", "Run-2", "Run-3"], NearNames.Find("Run-4", ["Run-3", "Run-2", "run-3", "Run-1", "Other"], 3));

    [Fact]
    public void Only_alike_leaves_out_what_differs_by_more_than_a_third() =>
        Assert.Equal(["B-014"], NearNames.Find("B-O14", ["Lantern", "B-014", "B-209"], 5, onlyAlike: true));

    [Fact]
    public void A_text_without_end_is_compared_by_its_beginning() =>
        Assert.Equal("turns", NearNames.Nearest("turns" + new string(' ', 100_000), s_fields));
}
