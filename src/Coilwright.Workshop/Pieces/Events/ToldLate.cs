using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>Another event was told late: it waited on a tablet, with the times that the tablet showed.</summary>
public sealed record ToldLate : RemarkAbout
{
    /// <summary>When the person made it.</summary>
    public required DateTimeOffset SaidUtc { get; init; }

    /// <summary>When the tablet sent it.</summary>
    public required DateTimeOffset SentUtc { get; init; }

    /// <summary>The tablet's two times.</summary>
    public LateEntry Times => new(SaidUtc, SentUtc);

    public override string Short => "told late";

    /// <summary>It stands behind the line of the event that was told late.</summary>
    public override bool HasLine => false;

    /// <summary>Records that go with events told late, one for each; none for those told at once.</summary>
    internal static IEnumerable<PieceEvent> Of(IEnumerable<PieceEvent> events, LateEntry? told) =>
        told is null
            ? []
            : events.Select(one => new ToldLate
            {
                Id = ReadingChain.IdWithin(one.Id, "told"),
                PieceId = one.PieceId,
                About = one.Id,
                SaidUtc = told.SaidUtc.ToUniversalTime(),
                SentUtc = told.SentUtc.ToUniversalTime(),
                Person = one.Person,
                TimeUtc = one.TimeUtc,
            });
}
