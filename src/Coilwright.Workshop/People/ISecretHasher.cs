namespace Coilwright.Workshop.People;

/// <summary>Makes of a password or PIN what it can be checked against and never read from.</summary>
public interface ISecretHasher
{
    /// <summary>What is kept; another each time.</summary>
    string Hash(string typed);

    /// <summary>True when what was typed is what was kept.</summary>
    bool Matches(string kept, string typed);
}
