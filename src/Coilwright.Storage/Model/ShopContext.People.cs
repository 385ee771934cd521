using Coilwright.Workshop.People;
using Coilwright.Workshop.Secrets;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Model;

public partial class ShopContext
{
    internal DbSet<AccountRecord> Accounts => Set<AccountRecord>();
    internal DbSet<AccountEventRecord> AccountEvents => Set<AccountEventRecord>();
    internal DbSet<SessionRecord> Sessions => Set<SessionRecord>();
    internal DbSet<TokenRecord> Tokens => Set<TokenRecord>();
    internal DbSet<SecretMarkRecord> SecretMarks => Set<SecretMarkRecord>();

    /// <summary>People who sign in, and what is kept from some of them.</summary>
    private static void MapPeople(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<AccountRecord>(account =>
        {
            account.ToTable("Accounts").HasKey(row => row.Id);
            account.Property(row => row.Id).ValueGeneratedNever();
            account.Property(row => row.Role).HasConversion<string>();
            account.HasIndex(row => row.NameKey).IsUnique().HasFilter("LeftUtc IS NULL");
        });
        modelBuilder.Entity<AccountEventRecord>(happened =>
        {
            happened.ToTable("AccountEvents").HasKey(CountedKey(happened));
            happened.HasAlternateKey(row => row.Id);
            happened.Property(row => row.Act).HasConversion<string>();
        });
        modelBuilder.Entity<SessionRecord>(session =>
        {
            session.ToTable("Sessions").HasKey(row => row.Id);
            session.Property(row => row.Id).ValueGeneratedNever();
            session.HasIndex(row => row.KeyHash).IsUnique();
        });
        modelBuilder.Entity<TokenRecord>(token =>
        {
            token.ToTable("Tokens").HasKey(row => row.Id);
            token.Property(row => row.Id).ValueGeneratedNever();
            token.Property(row => row.Role).HasConversion<string>();
            token.HasIndex(row => row.KeyHash).IsUnique();
        });
        modelBuilder.Entity<SecretMarkRecord>(mark =>
        {
            mark.ToTable("SecretMarks").HasKey(CountedKey(mark));
            mark.HasAlternateKey(row => row.Id);
            mark.HasIndex(row => row.RecipeId);
        });
    }
}
