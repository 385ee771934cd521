using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Steps;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Model;

/// <summary>The tables of pieces, their steps, customers and the shop's rules.</summary>
public partial class ShopContext
{
    private static void MapPieces(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<PieceRecord>(piece =>
        {
            piece.ToTable("Pieces").HasKey(CountedKey(piece));
            piece.HasAlternateKey(row => row.Id);
            piece.Property(row => row.Serial).UseCollation("NOCASE");
            piece.HasIndex(row => row.Serial).IsUnique();
            piece
                .HasOne<RevisionRecord>()
                .WithMany()
                .HasForeignKey(row => new { row.RecipeId, row.RevisionNumber })
                .OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<OpenPieceRow>(open => open.ToTable("OpenPieces").HasKey(row => row.PieceId));
        modelBuilder.Entity<PiecePartRecord>(part =>
        {
            part.ToTable("PieceParts").HasKey(CountedKey(part));
            part.HasAlternateKey(row => row.Id);
            part.Property(row => row.Kind).HasConversion<string>();
            part.Property(row => row.Lot).UseCollation("NOCASE");
            part.HasIndex(row => new { row.BatchId, row.Tag });
            part.HasIndex(row => row.Lot);
            part.HasIndex(row => row.PieceId);
            part.HasOne<PieceRecord>()
                .WithMany()
                .HasForeignKey(row => row.PieceId)
                .HasPrincipalKey(row => row.Id)
                .OnDelete(DeleteBehavior.Restrict);
            part.HasOne<BatchRecord>().WithMany().HasForeignKey(row => row.BatchId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<PieceEventRow>(happened =>
        {
            happened.ToTable("PieceEvents").HasKey(CountedKey(happened));
            happened.HasAlternateKey(row => row.Id);
            happened.HasIndex(row => row.PieceId);
            happened.HasIndex(row => row.BasketId).HasFilter("BasketId IS NOT NULL");
            happened.HasIndex(row => row.MixId).HasFilter("MixId IS NOT NULL");
            happened.HasIndex(row => row.CustomerId).HasFilter("CustomerId IS NOT NULL");
            happened.HasIndex(row => new { row.Kind, row.PieceId }).HasFilter("Kind = 'MadeGolden'");
            happened
                .HasOne<PieceRecord>()
                .WithMany()
                .HasForeignKey(row => row.PieceId)
                .HasPrincipalKey(row => row.Id)
                .OnDelete(DeleteBehavior.Restrict);
            happened
                .HasOne<BasketRecord>()
                .WithMany()
                .HasForeignKey(row => row.BasketId)
                .HasPrincipalKey(row => row.Id)
                .OnDelete(DeleteBehavior.Restrict);
            happened
                .HasOne<InkMixRecord>()
                .WithMany()
                .HasForeignKey(row => row.MixId)
                .HasPrincipalKey(row => row.Id)
                .OnDelete(DeleteBehavior.Restrict);
            happened
                .HasOne<CustomerRecord>()
                .WithMany()
                .HasForeignKey(row => row.CustomerId)
                .HasPrincipalKey(row => row.Id)
                .OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<PieceReadingRecord>(reading =>
        {
            reading.ToTable("PieceReadings").HasKey(CountedKey(reading));
            reading.HasAlternateKey(row => row.Id);
            reading.HasIndex(row => row.PieceId);
            reading
                .HasOne<PieceRecord>()
                .WithMany()
                .HasForeignKey(row => row.PieceId)
                .HasPrincipalKey(row => row.Id)
                .OnDelete(DeleteBehavior.Restrict);
        });
        MapSteps(modelBuilder);
    }

    private static void MapSteps(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<BasketRecord>(basket =>
        {
            basket.ToTable("Baskets").HasKey(CountedKey(basket));
            basket.HasAlternateKey(row => row.Id);
            basket.Property(row => row.Label).UseCollation("NOCASE");
            basket.Property(row => row.Lot).UseCollation("NOCASE");
        });
        modelBuilder.Entity<BathReadingRecord>(reading =>
        {
            reading.ToTable("BathReadings").HasKey(CountedKey(reading));
            reading.HasAlternateKey(row => row.Id);
            reading
                .HasOne<BasketRecord>()
                .WithMany()
                .HasForeignKey(row => row.BasketId)
                .HasPrincipalKey(row => row.Id)
                .OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<InkMixRecord>(mix =>
        {
            mix.ToTable("InkMixes").HasKey(CountedKey(mix));
            mix.HasAlternateKey(row => row.Id);
            mix.Property(row => row.Label).UseCollation("NOCASE");
            mix.HasIndex(row => row.Label).IsUnique();
        });
        modelBuilder.Entity<StepUndoRecord>(undo =>
        {
            undo.ToTable("StepUndos").HasKey(CountedKey(undo));
            undo.HasAlternateKey(row => row.Id);
            undo.HasIndex(row => row.About).IsUnique();
        });
        modelBuilder.Entity<CustomerRecord>(customer =>
        {
            customer.ToTable("Customers").HasKey(CountedKey(customer));
            customer.HasAlternateKey(row => row.Id);
            customer.Property(row => row.Reference).UseCollation("NOCASE");
            customer.HasIndex(row => row.Reference).IsUnique();
        });
        modelBuilder.Entity<ShopRulesRecord>(rules =>
        {
            rules.ToTable("Rules").HasKey(CountedKey(rules));
            rules.HasAlternateKey(row => row.Id);
        });
    }

    /// <summary>
    /// A piece that has not left the shop: follows from the events, and is kept so that the board need not read every piece ever made.
    /// </summary>
    internal sealed record OpenPieceRow(Guid PieceId);
}
