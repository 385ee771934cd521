using System.Globalization;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Learning;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Stock;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Coilwright.Storage.Model;

/// <summary>The tables of a shop's file. Times are ISO 8601 text in UTC, so that they sort as they read.</summary>
public partial class ShopContext(DbContextOptions options) : DbContext(options)
{
    /// <summary>Order of entry; the database counts it.</summary>
    internal const string EntryOrder = "EntryOrder";

    internal DbSet<ShopRow> Shop => Set<ShopRow>();
    internal DbSet<RevisionRecord> Revisions => Set<RevisionRecord>();
    internal DbSet<BatchRecord> Batches => Set<BatchRecord>();
    internal DbSet<BatchLimitsRecord> BatchLimits => Set<BatchLimitsRecord>();
    internal DbSet<BatchSummaryRow> BatchSummaries => Set<BatchSummaryRow>();
    internal DbSet<ReadingRecord> Readings => Set<ReadingRecord>();
    internal DbSet<RoomTemperature> RoomTemperatures => Set<RoomTemperature>();
    internal DbSet<MachineRecord> Machines => Set<MachineRecord>();
    internal DbSet<SpoolRecord> Spools => Set<SpoolRecord>();
    internal DbSet<SpoolReadingRecord> SpoolReadings => Set<SpoolReadingRecord>();
    internal DbSet<BatchEventRow> BatchEvents => Set<BatchEventRow>();
    internal DbSet<PieceRecord> Pieces => Set<PieceRecord>();
    internal DbSet<OpenPieceRow> OpenPieces => Set<OpenPieceRow>();
    internal DbSet<PiecePartRecord> PieceParts => Set<PiecePartRecord>();
    internal DbSet<PieceEventRow> PieceEvents => Set<PieceEventRow>();
    internal DbSet<PieceReadingRecord> PieceReadings => Set<PieceReadingRecord>();
    internal DbSet<BasketRecord> Baskets => Set<BasketRecord>();
    internal DbSet<BathReadingRecord> BathReadings => Set<BathReadingRecord>();
    internal DbSet<InkMixRecord> InkMixes => Set<InkMixRecord>();
    internal DbSet<StepUndoRecord> StepUndos => Set<StepUndoRecord>();
    internal DbSet<CustomerRecord> Customers => Set<CustomerRecord>();
    internal DbSet<LearningRecord> Learning => Set<LearningRecord>();
    internal DbSet<ShopRulesRecord> Rules => Set<ShopRulesRecord>();

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<IsoUtc>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<ShopRow>(shop => shop.ToTable("Shop").HasKey(row => row.Id));
        modelBuilder.Entity<RevisionRecord>(revision =>
        {
            revision.ToTable("Revisions").HasKey(row => new { row.RecipeId, row.Number });
            revision.Property(row => row.State).HasConversion<string>();
        });
        modelBuilder.Entity<BatchRecord>(batch =>
        {
            batch.ToTable("Batches").HasKey(row => row.Id);
            batch.Property(row => row.Id).ValueGeneratedNever();
            batch
                .HasOne<RevisionRecord>()
                .WithMany()
                .HasForeignKey(row => new { row.RecipeId, row.RevisionNumber })
                .OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<BatchLimitsRecord>(limits =>
        {
            limits.ToTable("BatchLimits").HasKey(CountedKey(limits));
            limits.HasAlternateKey(row => row.Id);
            limits.HasIndex(row => new { row.BatchId, row.AtHz }).IsUnique();
            limits.HasOne<BatchRecord>().WithMany().HasForeignKey(row => row.BatchId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<BatchSummaryRow>(summary =>
        {
            summary.ToTable("BatchSummaries").HasKey(row => row.BatchId);
            summary.Property(row => row.BatchId).ValueGeneratedNever();
            summary.HasIndex(row => row.State);
            summary.HasOne<BatchRecord>().WithOne().HasForeignKey<BatchSummaryRow>(row => row.BatchId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<LearningRecord>(learning =>
        {
            learning.ToTable("Learning").HasKey(CountedKey(learning));
            learning.HasAlternateKey(row => row.Id);
            learning.Property(row => row.Act).HasConversion<string>();
            learning.HasIndex(row => new { row.Act, row.Number }).IsUnique();
        });
        modelBuilder.Entity<ReadingRecord>(MapReading);
        modelBuilder.Entity<RoomTemperature>(room => room.ToTable("RoomTemperatures").HasKey(CountedKey(room)));
        MapWindingRoom(modelBuilder);
        MapPieces(modelBuilder);
        MapPeople(modelBuilder);
    }

    private static void MapWindingRoom(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<MachineRecord>(machine =>
        {
            machine.ToTable("Machines").HasKey(CountedKey(machine));
            machine.HasAlternateKey(row => row.Id);
        });
        modelBuilder.Entity<SpoolRecord>(spool =>
        {
            spool.ToTable("Spools").HasKey(CountedKey(spool));
            spool.HasAlternateKey(row => row.Id);
            spool.Property(row => row.Label).UseCollation("NOCASE");
            spool.HasIndex(row => row.Label).IsUnique();
        });
        modelBuilder.Entity<SpoolReadingRecord>(reading =>
        {
            reading.ToTable("SpoolReadings").HasKey(CountedKey(reading));
            reading.HasAlternateKey(row => row.Id);
            reading.Property(row => row.Kind).HasConversion<string>();
            reading
                .HasOne<SpoolRecord>()
                .WithMany()
                .HasForeignKey(row => row.SpoolId)
                .HasPrincipalKey(row => row.Id)
                .OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<BatchEventRow>(happened =>
        {
            happened.ToTable("BatchEvents").HasKey(CountedKey(happened));
            happened.HasAlternateKey(row => row.Id);
            happened.HasIndex(row => row.BatchId);
            happened.HasIndex(row => row.Spool).HasFilter("Spool <> ''");
            happened.HasIndex(row => row.Undoes).IsUnique();
            happened.HasOne<BatchRecord>().WithMany().HasForeignKey(row => row.BatchId).OnDelete(DeleteBehavior.Restrict);
            happened
                .HasOne<BatchEventRow>()
                .WithOne()
                .HasForeignKey<BatchEventRow>(row => row.Undoes)
                .HasPrincipalKey<BatchEventRow>(row => row.Id)
                .OnDelete(DeleteBehavior.Restrict);
        });
    }

    private static void MapReading(EntityTypeBuilder<ReadingRecord> reading)
    {
        reading.ToTable("Readings").HasKey(CountedKey(reading));
        reading.HasAlternateKey(row => row.Id);
        reading.HasIndex(row => row.BatchId);
        reading.HasIndex(row => new { row.BatchId, row.Quantity });
        reading.HasIndex(row => row.Supersedes).IsUnique();
        reading.HasOne<BatchRecord>().WithMany().HasForeignKey(row => row.BatchId).OnDelete(DeleteBehavior.Restrict);
        reading
            .HasOne<ReadingRecord>()
            .WithOne()
            .HasForeignKey<ReadingRecord>(row => row.Supersedes)
            .HasPrincipalKey<ReadingRecord>(row => row.Id)
            .OnDelete(DeleteBehavior.Restrict);
    }

    private static string CountedKey<T>(EntityTypeBuilder<T> entity)
        where T : class
    {
        entity.Property<long>(EntryOrder).ValueGeneratedOnAdd();
        return EntryOrder;
    }

    /// <summary>The one row that says whose file this is.</summary>
    internal sealed record ShopRow(int Id, string Name, DateTimeOffset CreatedUtc);

    private sealed class IsoUtc()
        : ValueConverter<DateTimeOffset, string>(
            time => time.UtcDateTime.ToString("O", CultureInfo.InvariantCulture),
            text =>
                DateTimeOffset.Parse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal)
        );
}
