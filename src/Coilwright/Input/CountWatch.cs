using Coilwright.Application.Instruments;
using Coilwright.Output;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Input;

/// <summary>Shows a count as it comes, passes it on at most ten times a second, and notices when the turns end before the stop.</summary>
/// <param name="formatter">Shows it here.</param>
/// <param name="sender">Passes it on; null where nobody asked for it.</param>
/// <param name="time">The clock.</param>
internal sealed class CountWatch(CountFormatter formatter, MeterSender? sender, TimeProvider time)
{
    /// <summary>How long a running winder gives no count at most: the slowest turn over a second or so. Our choice.</summary>
    private static readonly TimeSpan s_quiet = TimeSpan.FromSeconds(3);

    private static readonly TimeSpan s_look = TimeSpan.FromMilliseconds(100);

    private readonly Lock _gate = new();
    private CountState? _state;
    private double _rpm;
    private string _note = "";
    private long _at;
    private bool _isNew,
        _runs;

    /// <summary>The next line of the counter.</summary>
    /// <param name="step">What it says.</param>
    /// <param name="rpm">Turns a minute just now.</param>
    public void Take(CountStep step, double rpm)
    {
        lock (_gate)
        {
            formatter.Write(step);
            if (step.Problem.Length > 0)
            {
                return;
            }

            _state = step.State;
            _rpm = rpm;
            _note = NoteOf(step.State.Note) is { Length: > 0 } note ? note : _note;
            _at = time.GetTimestamp();
            _isNew = true;
            _runs = _runs || rpm > 0;
        }
    }

    /// <summary>The link is lost, or cannot be made.</summary>
    public void Lose(string message)
    {
        lock (_gate)
        {
            formatter.WriteFault(message);
            _note = "lost";
            _isNew = _state is not null;
            _runs = false;
        }
    }

    /// <summary>Looks again and again, until it is given up.</summary>
    public async Task RunAsync(CancellationToken cancel)
    {
        while (!cancel.IsCancellationRequested)
        {
            await LookAsync(cancel).ConfigureAwait(false);
            await Task.Delay(s_look, time, cancel).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    /// <summary>Passes on what has not been passed on yet.</summary>
    public async Task LookAsync(CancellationToken cancel)
    {
        object? body;
        lock (_gate)
        {
            NoticeEnd();
            body = _isNew && _state is { } state ? BodyOf(state) : null;
            (_isNew, _note) = (false, "");
        }

        if (body is null || sender is null)
        {
            return;
        }

        string trouble = await sender.SendAsync(body, cancel).ConfigureAwait(false);
        if (trouble.Length > 0)
        {
            lock (_gate)
            {
                formatter.WriteFault(trouble);
            }
        }
    }

    private void NoticeEnd()
    {
        if (_runs && _state is { ToStop: > 0.5 } state && time.GetElapsedTime(_at) > s_quiet)
        {
            formatter.WriteEnded(state);
            (_runs, _rpm, _note, _isNew) = (false, 0, "ended", true);
        }
    }

    private object BodyOf(CountState state) =>
        new
        {
            counter = state.Counter,
            turns = state.Turns,
            toStop = state.ToStop,
            rpm = _rpm,
            note = _note,
        };

    private static string NoteOf(CountNote note) =>
        note switch
        {
            CountNote.Soon => "soon",
            CountNote.Stop => "stop",
            CountNote.Back => "back",
            CountNote.Ahead => "ahead",
            _ => "",
        };
}
