using Coilwright.Workshop.Entry;

namespace Coilwright.Papers.Repairs;

/// <summary>What a repair report says.</summary>
/// <param name="Serial">The piece.</param>
/// <param name="Complaint">What the customer said.</param>
/// <param name="Readings">Then and now.</param>
/// <param name="Verdict">What was found, in words.</param>
public sealed record RepairContent(string Serial, string Complaint, IReadOnlyList<RepairReading> Readings, string Verdict)
{
    public string Recipe { get; init; } = "";
    public string Customer { get; init; } = "";
    public DateOnly? Dispatched { get; init; }
    public DateOnly? CameBack { get; init; }

    /// <summary>What was done, one line each.</summary>
    public IReadOnlyList<string> Done { get; init; } = [];

    /// <summary>
    /// What it costs the customer, with its currency as the shop writes it, for example "0, warranty"; empty when not settled.
    /// </summary>
    public string Cost { get; init; } = "";

    /// <summary>Text for the customer; a new line begins a paragraph.</summary>
    public string Answer { get; init; } = "";

    /// <summary>Every problem; none when a report can be made of it.</summary>
    public IReadOnlyList<Problem> Check()
    {
        List<Problem> problems = [];
        foreach ((string field, string value) in ((string, string)[])[("serial", Serial), ("complaint", Complaint), ("verdict", Verdict)])
        {
            if (string.IsNullOrWhiteSpace(value))
            {
                problems.Add(new Problem(field, "is missing", Allowed: "at least one word"));
            }
        }

        for (int at = 0; at < Readings.Count; at++)
        {
            if (Readings[at] is { AtDispatch: null, Now: null })
            {
                problems.Add(
                    new Problem(
                        FormattableString.Invariant($"readings[{at}]"),
                        "holds no reading",
                        Allowed: "one at dispatch, one now, or both"
                    )
                );
            }

            if (Readings[at] is { AtDispatch: { } then, Now: { } now } && then.Quantity != now.Quantity)
            {
                problems.Add(
                    new Problem(
                        FormattableString.Invariant($"readings[{at}]"),
                        "compares two quantities",
                        $"{then.Quantity}, {now.Quantity}",
                        "one quantity then and now"
                    )
                );
            }
        }

        return problems;
    }
}
