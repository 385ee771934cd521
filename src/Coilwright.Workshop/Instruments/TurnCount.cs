namespace Coilwright.Workshop.Instruments;

/// <summary>What a count has to say beside its turns.</summary>
public enum CountNote
{
    /// <summary>Nothing: it winds on.</summary>
    None,

    /// <summary>The stop is near; told once.</summary>
    Soon,

    /// <summary>The stop is reached; told once.</summary>
    Stop,

    /// <summary>The counter shows less than before.</summary>
    Back,

    /// <summary>The counter runs on by more than a winder can turn in that time.</summary>
    Ahead,
}

/// <summary>Where a count stands.</summary>
/// <param name="Counter">What the counter shows, or pulses so far.</param>
/// <param name="Turns">Turns on the bobbin: the counter's with the correction of its marked test.</param>
/// <param name="ToStop">Turns that are still to come; null without a stop, less than nothing when wound past it.</param>
/// <param name="Note">What to say.</param>
/// <param name="Before">What the counter showed before, where the note is about that.</param>
public sealed record CountState(double Counter, double Turns, double? ToStop, CountNote Note, double Before = 0);

/// <summary>
/// Turns as a counter gives them. Each reading is the counter's own and stands for itself: a lost reading loses nothing, the next one says
/// it all, and one that comes twice adds nothing. Nothing is guessed: a counter that jumps is said to jump.
/// </summary>
/// <param name="correction">Real turns per count, 0.5 to 2; 1 for pulses of the spindle itself.</param>
/// <param name="stop">Turns at which to stop; null for none.</param>
/// <param name="from">What was counted before, counts: where pulses go on.</param>
public sealed class TurnCount(double correction = 1, double? stop = null, double from = 0)
{
    /// <summary>Highest count that a counter shows.</summary>
    public const double Most = 1e6;

    /// <summary>
    /// The warning comes so many turns before the stop, or <see cref="SoonTime"/> before it where that is more. Our choice.
    /// </summary>
    public const double SoonTurns = 100;

    /// <summary>Faster than any winder for this wire turns, turns a minute; a reading that says more was misread. Our choice.</summary>
    public const double FastestRpm = 15_000;

    /// <summary>Time to the stop at which the warning comes.</summary>
    public static readonly TimeSpan SoonTime = TimeSpan.FromSeconds(5);

    /// <summary>A correction makes parts of turns: within half a turn the stop is reached.</summary>
    private const double Reached = 0.5;

    /// <summary>A link may hold lines back for so long and give several at once.</summary>
    private static readonly TimeSpan s_held = TimeSpan.FromSeconds(2);

    private static readonly TimeSpan s_window = TimeSpan.FromSeconds(2);

    private readonly Queue<(TimeSpan At, double Counter)> _recent = [];
    private double _counter = from;
    private TimeSpan? _last;
    private bool _any = from > 0,
        _soon,
        _stopped;

    /// <summary>Where it stands.</summary>
    public CountState State => StateOf(CountNote.None);

    /// <summary>How often the counter jumped, back or ahead.</summary>
    public int Jumps { get; private set; }

    /// <summary>Turns a minute over the last two seconds; zero when nothing turned.</summary>
    /// <param name="now">Now, on the clock of the readings.</param>
    public double Rpm(TimeSpan now)
    {
        while (_recent.Count > 0 && now - _recent.Peek().At > s_window)
        {
            _recent.Dequeue();
        }

        if (_recent.Count < 2)
        {
            return 0;
        }

        (TimeSpan at, double counter) = _recent.Peek();
        double minutes = (now - at).TotalMinutes;
        return minutes > 0 ? Math.Max(0, _counter - counter) * correction / minutes : 0;
    }

    /// <summary>True when the turns ended before the stop: they ran, and for longer than <paramref name="quiet"/> nothing came.</summary>
    /// <param name="now">Now, on the clock of the readings.</param>
    /// <param name="quiet">How long a running winder gives no count at most.</param>
    public bool EndedEarly(TimeSpan now, TimeSpan quiet) =>
        _any && stop is { } turns && _counter * correction < turns && _last is { } last && now - last > quiet;

    /// <summary>One pulse: one count more.</summary>
    /// <param name="at">When, on a clock that only runs forward; null where nothing is known of time.</param>
    public CountState Pulse(TimeSpan? at) => Add(at, _counter + 1);

    /// <summary>The counter's next reading.</summary>
    /// <param name="at">When, on a clock that only runs forward; null where nothing is known of time.</param>
    /// <param name="counter">What it shows, zero or more.</param>
    public CountState Add(TimeSpan? at, double counter)
    {
        double before = _counter;
        bool first = !_any;
        bool back = !first && counter < before;
        bool ahead = !first && at is { } now && _last is { } last && IsTooFast(counter - before, now - last);
        _any = true;
        _counter = counter;
        if (counter != before || first)
        {
            Keep(at, back || ahead);
        }

        if (back || ahead)
        {
            Jumps++;
            _soon &= !back;
            _stopped &= !back;
            return StateOf(back ? CountNote.Back : CountNote.Ahead, before);
        }

        return StateOf(NoteOf(at ?? TimeSpan.Zero));
    }

    private bool IsTooFast(double counts, TimeSpan passed) => counts * correction > FastestRpm * (passed + s_held).TotalMinutes;

    private void Keep(TimeSpan? at, bool jumped)
    {
        _last = at;
        if (jumped)
        {
            _recent.Clear();
        }

        if (at is { } time)
        {
            _recent.Enqueue((time, _counter));
        }
    }

    private CountNote NoteOf(TimeSpan now)
    {
        if (stop is not { } turns)
        {
            return CountNote.None;
        }

        double left = turns - _counter * correction;
        if (left <= Reached && !_stopped)
        {
            _stopped = _soon = true;
            return CountNote.Stop;
        }

        if (!_soon && left <= Math.Max(SoonTurns, Rpm(now) * SoonTime.TotalMinutes))
        {
            _soon = true;
            return CountNote.Soon;
        }

        return CountNote.None;
    }

    private CountState StateOf(CountNote note, double before = 0) =>
        new(_counter, _counter * correction, stop is { } turns ? turns - _counter * correction : null, note, before);
}
