using Coilwright.Workshop.Rules;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Pieces;

/// <summary>What every paper of a piece rests on besides the piece.</summary>
/// <param name="Shop">Name of the shop.</param>
/// <param name="Rules">The shop's rules.</param>
/// <param name="NowUtc">The shop's now.</param>
public sealed record PaperGround(string Shop, ShopRules Rules, DateTimeOffset NowUtc)
{
    /// <summary>Heading of a paper of a revision.</summary>
    public SheetHeading Heading(string revision) => new(Shop, revision, Day(NowUtc));

    /// <summary>The day at the shop.</summary>
    public DateOnly Day(DateTimeOffset utc) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(utc, Rules.Zone).DateTime);
}
