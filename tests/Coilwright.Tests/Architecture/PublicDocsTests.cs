namespace Coilwright.Tests.Architecture;

/// <summary>Whoever calls the physics reads in its documentation what a number out of range leads to.</summary>
public sealed class PublicDocsTests
{
    private const string Planted = """
        public static class Rope
        {
            /// <summary>Half of it.</summary>
            public static double Half(double lengthM)
            {
                Require.InRange(lengthM, 0, 1);

                return lengthM / 2;
            }

            /// <summary>Twice as much.</summary>
            /// <exception cref="ArgumentOutOfRangeException">The length lies outside its range.</exception>
            public static double Twice(double lengthM) => 2 * Require.InRange(lengthM, 0, 1);

            /// <summary>A third, over several lines.</summary>
            public static double Third(
                double lengthM
            ) => Require.InRange(lengthM, 0, 1) / 3;

            /// <summary>Nothing is checked here; Require.InRange stands next.</summary>
            public static double Same(double lengthM) => lengthM;

            private static double Hidden(double lengthM) => Require.InRange(lengthM, 0, 1);

            private sealed class Inside
            {
                public double Own(double lengthM) => Require.InRange(lengthM, 0, 1);
            }
        }

        internal static class Room
        {
            public static double Quarter(double lengthM) => Require.InRange(lengthM, 0, 1) / 4;
        }
        """;

    [Fact]
    public void A_guard_without_its_exception_is_seen()
    {
        IReadOnlyList<GuardedMember> guarded = GuardedMembers.In(Planted);
        Assert.Equal(
            [
                ("public static double Half(double lengthM)", false),
                ("public static double Twice(double lengthM) => 2 * Require.InRange(lengthM, 0, 1);", true),
                ("public static double Third(", false),
            ],
            guarded.Select(member => (member.Declaration, member.SaysWhatItThrows))
        );
    }

    [Fact]
    public void Every_guarded_member_of_the_physics_says_what_it_throws()
    {
        GuardedMember[] guarded =
        [
            .. RepositoryFiles
                .Written(Path.Combine("src", "Coilwright.Physics"), ".cs")
                .SelectMany(path => GuardedMembers.In(File.ReadAllText(path))),
        ];
        Assert.Contains(guarded, member => member.Declaration.Contains(" OhmPerM(", StringComparison.Ordinal));
        Assert.Contains(guarded, member => member.Declaration.Contains(" TabulatedBranch(", StringComparison.Ordinal));
        Assert.Empty(guarded.Where(member => !member.SaysWhatItThrows).Select(member => member.Declaration));
    }
}
