namespace Coilwright.Workshop.People;

/// <summary>What was done with accounts, as a sentence.</summary>
public static class AccountWords
{
    /// <summary>One line of the record.</summary>
    public static string Of(AccountEventRecord one) =>
        one.Act switch
        {
            AccountAct.Invited => $"{one.Person} made the account of {one.About}, {one.Detail}",
            AccountAct.RoleChanged => $"{one.Person} made {one.About} {one.Detail}",
            AccountAct.PasswordSet => $"{one.Person} set a new password for {one.About}",
            AccountAct.PinSet => $"{one.Person} set the PIN of {one.About}",
            AccountAct.PinRemoved => $"{one.Person} took away the PIN of {one.About}",
            AccountAct.Left => $"{one.Person} ended the account of {one.About}",
            AccountAct.SignedIn => $"{one.About} signed in ({one.Detail})",
            AccountAct.SignedOut => $"{one.About} signed out",
            AccountAct.Locked => $"too many wrong passwords for {one.About}",
            AccountAct.PinLocked => $"too many wrong PINs for {one.About}",
            AccountAct.SessionEnded => $"{one.Person} ended a session ({one.About})",
            AccountAct.TokenMade => $"{one.Person} made the token {one.About}, {one.Detail}",
            AccountAct.TokenEnded => $"{one.Person} ended the token {one.About}",
            AccountAct.SecretSeen => $"{one.Person} saw what is set for {one.About}, {one.Detail}",
            _ => one.Act.ToString(),
        };
}
