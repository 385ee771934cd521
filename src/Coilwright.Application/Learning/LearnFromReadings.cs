using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Learning;

namespace Coilwright.Application.Learning;

/// <summary>A person asks what the shop's readings teach, and decides about it.</summary>
public sealed class LearnFromReadings(LearningService learning)
{
    /// <summary>What is on record, and from how many coils it can be learnt.</summary>
    public Task<LearningStatus> ListAsync(CancellationToken cancel) => learning.ListAsync(cancel);

    /// <summary>What the readings show now; kept as a numbered proposal when they show something new.</summary>
    public Task<LearningStatus> ProposeAsync(string reason, string person, CancellationToken cancel) =>
        learning.ProposeAsync(reason, person, cancel);

    /// <summary>A proposed set holds for later forecasts.</summary>
    public Task<IReadOnlyList<Problem>> AcceptAsync(int number, string reason, string person, CancellationToken cancel) =>
        learning.DecideAsync(number, accept: true, reason, person, cancel);

    /// <summary>A proposed set does not hold.</summary>
    public Task<IReadOnlyList<Problem>> DeclineAsync(int number, string reason, string person, CancellationToken cancel) =>
        learning.DecideAsync(number, accept: false, reason, person, cancel);

    /// <summary>A line ends: coils that are wound from now on begin another.</summary>
    public Task<IReadOnlyList<Problem>> CloseAsync(string line, string reason, string person, CancellationToken cancel) =>
        learning.CloseAsync(line, reason, person, cancel);
}
