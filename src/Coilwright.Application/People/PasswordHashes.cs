using Coilwright.Workshop.People;
using Microsoft.AspNetCore.Identity;

namespace Coilwright.Application.People;

/// <summary>Passwords and PINs as ASP.NET Core Identity keeps them: PBKDF2 with HMAC-SHA512, salted, rounds in the text.</summary>
public sealed class PasswordHashes : ISecretHasher
{
    private readonly PasswordHasher<PasswordHashes> _hasher = new();

    public string Hash(string typed) => _hasher.HashPassword(this, typed);

    public bool Matches(string kept, string typed) => _hasher.VerifyHashedPassword(this, kept, typed) != PasswordVerificationResult.Failed;
}
