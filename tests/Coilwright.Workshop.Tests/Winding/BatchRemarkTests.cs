using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>What the coils of a batch have in common is said once, by tag, and of no coil; where a coil is doubtful, it is held.</summary>
public sealed class BatchRemarkTests
{
    [Fact]
    public async Task A_spool_that_was_changed_unnoticed_is_said_once_from_its_first_coil_on()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        for (int n = 1; n <= 12; n++)
        {
            double kilo = (n < 8 ? 6.10 : 6.34) + 0.01 * (n % 3 - 1);
            await shop.KeptAsync(WorkingShop.Entry(batch, $"C-{n:000}", FormattableString.Invariant($"{kilo:0.000} k")));
        }

        BatchStatus standing = await shop.StatusAsync(batch);
        BatchRemark said = Assert.Single(standing.Remarks);
        Assert.Equal(("wire-changed", "C-008"), (said.Name, said.From));
        Assert.StartsWith("from C-008 on the coils read 3.9 % more ohms than before", said.Words, StringComparison.Ordinal);
        Assert.All(standing.Coils, coil => Assert.Empty(coil.Verdict.Told));
        Assert.All(standing.Coils, coil => Assert.Equal("", VerdictAdvice.Cause(coil.Verdict)));
    }

    [Fact]
    public async Task A_coil_without_a_target_is_held_where_its_core_is_as_good_as_surely_wrong()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(
            await shop.ReleasedAsync(WorkingShop.Harbour(targets: """{ "dcResistance": { "nominal": "6.18 kΩ", "tolerance": "4 %" } }"""))
        );
        for (int n = 1; n <= 8; n++)
        {
            await shop.KeptAsync(
                WorkingShop.Entry(batch, $"C-{n:000}", "6.18 k") with
                {
                    Inductance = n == 8 ? "2.00 H" : FormattableString.Invariant($"{2.53 + 0.01 * (n % 3 - 1):0.00} H"),
                }
            );
        }

        Verdict verdict = (await shop.StatusAsync(batch)).Coils[^1].Verdict;
        Assert.Equal(("wrong-core", VerdictKind.Hold), (verdict.Causes[0].Name, verdict.Kind));
        Assert.StartsWith("a fault is as good as sure", verdict.Reasons[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Causes_that_cannot_be_parted_are_one_sentence_with_the_reading_that_parts_them_and_its_cost()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        for (int n = 1; n <= 12; n++)
        {
            await shop.KeptAsync(WorkingShop.Entry(batch, $"C-{n:000}", n == 12 ? "6.36 k" : "6.13 k") with { Inductance = "2.54 H" });
        }

        Verdict verdict = (await shop.StatusAsync(batch)).Coils[^1].Verdict;
        string said = VerdictAdvice.Cause(verdict);
        Assert.Contains("; or ", said, StringComparison.Ordinal);
        Assert.EndsWith("together): the readings cannot tell which", said, StringComparison.Ordinal);
        Assert.Contains("warm coil", said, StringComparison.Ordinal);
        Assert.Equal("read the ohms once more, cold, on a second meter (about 2 min)", VerdictAdvice.Check(verdict));
    }
}
