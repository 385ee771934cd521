using Coilwright.Storage.Model;
using Coilwright.Workshop.Batches.Events;

namespace Coilwright.Storage.Tests;

/// <summary>An event of a batch as the file keeps it.</summary>
public sealed class BatchEventRowTests
{
    [Fact]
    public void A_spool_stands_in_its_column_and_comes_back()
    {
        SpoolTaken taken = new()
        {
            Id = Guid.NewGuid(),
            BatchId = Guid.NewGuid(),
            Spool = "0122",
            Choice = "hold-ohms",
            Turns = 0.1 + 0.2,
            Machine = "Winder 2",
            Person = "Mara",
            TimeUtc = TempShop.Noon,
        };
        BatchEventRow row = BatchEventRow.Of(taken);
        Assert.Equal(("SpoolTaken", "0122", "", null), (row.Kind, row.Spool, row.Tag, row.Undoes));
        Assert.DoesNotContain("0122", row.Payload, StringComparison.Ordinal);
        Assert.Equal(taken, row.ToEvent());
    }

    [Fact]
    public void Coils_wanted_are_a_number_of_coils_and_an_undo_names_what_it_takes_back()
    {
        MoreWanted more = new()
        {
            Id = Guid.NewGuid(),
            BatchId = Guid.NewGuid(),
            Coils = 3,
            Why = "a; b\nc",
            TimeUtc = TempShop.Noon,
        };
        Assert.Equal("""{"coils":3,"why":"a; b\nc"}""", BatchEventRow.Of(more).Payload);
        Assert.Equal(more, BatchEventRow.Of(more).ToEvent());
        Undone undone = new()
        {
            Id = Guid.NewGuid(),
            BatchId = more.BatchId,
            Undoes = more.Id,
            TimeUtc = TempShop.Noon,
        };
        BatchEventRow row = BatchEventRow.Of(undone);
        Assert.Equal((more.Id, "{}"), (row.Undoes, row.Payload));
        Assert.Equal(undone, row.ToEvent());
    }
}
