using System.Globalization;
using Coilwright.Application.Instruments;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Output;

/// <summary>Writes turns as they come, and what is to be known of them.</summary>
/// <param name="output">Turns.</param>
/// <param name="error">What is wrong with a line or the link.</param>
/// <param name="isCorrected">True where the counter's own reading differs from the turns.</param>
internal sealed class CountFormatter(TextWriter output, TextWriter error, bool isCorrected)
{
    private double? _shown;

    /// <summary>One line of the counter.</summary>
    public void Write(CountStep step)
    {
        if (step.Problem.Length > 0)
        {
            error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"line {step.Number}: {step.Problem}"));
            return;
        }

        CountState state = step.State;
        if (state.Note is CountNote.Back or CountNote.Ahead)
        {
            string how = state.Note == CountNote.Back ? "jumped back" : "jumped ahead faster than a winder turns";
            error.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"line {step.Number}: the counter {how}, from {Told(state.Before)} to {Told(state.Counter)}: look at it first"
                )
            );
        }

        if (_shown != state.Counter)
        {
            output.WriteLine(LineOf(state));
            output.Flush();
            _shown = state.Counter;
        }

        WriteNote(state);
    }

    /// <summary>The link is lost, or cannot be made.</summary>
    public void WriteFault(string message)
    {
        error.WriteLine("coilwright: " + message);
        error.Flush();
    }

    /// <summary>The turns ended before the stop.</summary>
    public void WriteEnded(CountState state)
    {
        output.WriteLine($"the turns ended at {Told(state.Turns)}, {Told(state.ToStop ?? 0)} before the stop: is the wire broken?");
        output.Flush();
    }

    /// <summary>How it ended.</summary>
    /// <returns>True when the turns can be trusted and no stop is missed.</returns>
    public bool WriteEnd(TurnLines lines)
    {
        CountState state = lines.Count.State;
        bool isShort = state.ToStop is > 0.5;
        bool good = lines.Unread == 0 && lines.Count.Jumps == 0 && !isShort;
        if (isShort)
        {
            output.WriteLine($"ended {TurnsOf(state.ToStop!.Value)} before the stop, at {Told(state.Turns)}");
        }

        if (lines.Unread > 0 || lines.Count.Jumps > 0)
        {
            error.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"lines not understood: {lines.Unread}; jumps of the counter: {lines.Count.Jumps}. Check the count"
                )
            );
        }

        return good;
    }

    private string LineOf(CountState state)
    {
        string turns = TurnsOf(state.Turns) + (isCorrected ? $" (counter {Told(state.Counter)})" : "");
        return state.ToStop switch
        {
            null => turns,
            >= 0 => $"{turns}, {Told(state.ToStop.Value)} to go",
            _ => $"{turns}, {Told(-state.ToStop.Value)} past the stop",
        };
    }

    private void WriteNote(CountState state)
    {
        if (state.Note == CountNote.Soon)
        {
            output.WriteLine($"slow down: {TurnsOf(Math.Max(0, state.ToStop ?? 0))} to the stop");
        }

        if (state.Note == CountNote.Stop)
        {
            output.WriteLine($"STOP at {Told(state.Turns)} turns");
        }
    }

    private static string TurnsOf(double turns) => Told(turns) + (turns == 1 ? " turn" : " turns");

    /// <summary>A tenth of a turn is all that a corrected count knows.</summary>
    private static string Told(double turns) => turns.ToString("#,##0.#", CultureInfo.InvariantCulture);
}
