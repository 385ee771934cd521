namespace Coilwright.Workshop.Steps;

/// <summary>The room's temperature from a moment on.</summary>
public sealed record TemperatureAt(DateTimeOffset FromUtc, double TemperatureC);

/// <summary>When something that began to harden has had its sheet's time, through a room that warms and cools.</summary>
/// <param name="Rule">How warmth counts.</param>
/// <param name="BegunUtc">When it was mixed or applied.</param>
/// <param name="SheetTime">The time the sheet states, at the rule's own temperature.</param>
/// <param name="Room">The room as read, in order of time; the first entry counts from the beginning, the last goes on.</param>
public sealed record CureClock(CureRule Rule, DateTimeOffset BegunUtc, TimeSpan SheetTime, IReadOnlyList<TemperatureAt> Room)
{
    /// <summary>The same in a room of one temperature.</summary>
    public static CureClock Steady(CureRule rule, DateTimeOffset begunUtc, TimeSpan sheetTime, double roomC) =>
        new(rule, begunUtc, sheetTime, [new TemperatureAt(begunUtc, roomC)]);

    /// <summary>When the sheet's time has been had, if the room stays as last read.</summary>
    public DateTimeOffset EndUtc
    {
        get
        {
            double left = SheetTime.TotalSeconds;
            DateTimeOffset at = BegunUtc;
            for (int entry = 0; entry < Room.Count - 1; entry++)
            {
                double span = (Room[entry + 1].FromUtc - at).TotalSeconds,
                    rate = Rule.Rate(Room[entry].TemperatureC);
                if (span <= 0)
                {
                    continue;
                }

                if (span * rate >= left)
                {
                    return at.AddSeconds(left / rate);
                }

                (left, at) = (left - span * rate, Room[entry + 1].FromUtc);
            }

            return at.AddSeconds(left / Rule.Rate(Room.Count > 0 ? Room[^1].TemperatureC : Rule.SheetC));
        }
    }

    /// <summary>The day it is done on, counted from the day it began as the first: 3.4 days end on the fourth.</summary>
    public int DayItIsDone => (int)Math.Ceiling(Math.Max(1e-9, (EndUtc - BegunUtc).TotalDays));
}
