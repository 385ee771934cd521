using Coilwright.Workshop.Entry;

namespace Coilwright.Input;

/// <summary>Reads what was typed after an option, the way the shop types it; every problem is gathered, none ends the reading.</summary>
public sealed class OptionReader
{
    private readonly List<Problem> _problems = [];

    /// <summary>A quantity in the unit of its kind, or <paramref name="unsaid"/> when the option was not given.</summary>
    /// <param name="option">Name of the option, for the message.</param>
    /// <param name="typed">What was typed, or null.</param>
    /// <param name="kind">What it measures.</param>
    /// <param name="low">Lowest allowed.</param>
    /// <param name="high">Highest allowed.</param>
    /// <param name="unsaid">Value when nothing was typed.</param>
    public double Quantity(string option, string? typed, QuantityKind kind, double low, double high, double unsaid)
    {
        if (typed is null)
        {
            return unsaid;
        }

        if (typed.Trim().Length == 0)
        {
            Add(option, $"\"{typed}\": nothing was entered");
            return unsaid;
        }

        QuantityReader reader = new(unitRequired: true);
        double? value = reader.Read(option, typed, new Limits(kind, low, high, "", ""));
        _problems.AddRange(reader.Problems);
        return value ?? unsaid;
    }

    /// <summary>A count of turns; null when the option was not given or is none.</summary>
    /// <param name="option">Name of the option, for the message.</param>
    /// <param name="typed">What was typed, or null.</param>
    /// <param name="limits">What is allowed.</param>
    public double? Turns(string option, string? typed, Limits limits)
    {
        if (typed is null)
        {
            return null;
        }

        QuantityReader reader = new(unitRequired: false);
        double? value = reader.Read(option, typed, limits);
        _problems.AddRange(reader.Problems);
        if (typed.Trim().Length == 0)
        {
            Add(option, "nothing was entered", null, limits.Range);
        }

        return value;
    }

    /// <summary>A list of frequencies, Hz, separated by commas: "120Hz,1kHz,8kHz".</summary>
    public IReadOnlyList<double>? Frequencies(string option, string? typed, double lowHz, double highHz)
    {
        if (typed is null)
        {
            return null;
        }

        string[] parts = typed.Split(',', StringSplitOptions.TrimEntries);
        double[] values =
        [
            .. parts.Select(part => Quantity(option, part, QuantityKind.Frequency, lowHz, highHz, 0)).Where(hz => hz > 0).Distinct(),
        ];
        if (parts.Length > 64)
        {
            _problems.Add(new Problem(option, "too many frequencies", $"{parts.Length}", "1 to 64"));
        }

        return values;
    }

    public void Add(string option, string message, string? understood = null, string? allowed = null) =>
        _problems.Add(new Problem(option, message, understood, allowed));

    /// <summary>Goes on only when nothing was wrong.</summary>
    /// <exception cref="WrongInputException">Something was.</exception>
    public void RefuseIfWrong()
    {
        if (_problems.Count > 0)
        {
            throw new WrongInputException("", _problems);
        }
    }
}
