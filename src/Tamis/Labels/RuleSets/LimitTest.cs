namespace Tamis.Labels;

/// <summary>How a figure is held against a limit.</summary>
public enum LimitTest
{
    /// <summary>It must be the limit or more.</summary>
    AtLeast,
    /// <summary>It must be more than the limit.</summary>
    Above,
    /// <summary>It must be the limit or less.</summary>
    AtMost,
    /// <summary>It must be less than the limit.</summary>
    Below,
    /// <summary>None of the words may stand in the food's own list of ingredients.</summary>
    NotListed,
}

/// <summary>What <see cref="LimitTest"/> means for two numbers.</summary>
public static class LimitTests
{
    internal static Dictionary<string, LimitTest> Words { get; } = new(Names.Comparer)
    {
        ["at least"] = LimitTest.AtLeast, ["more than"] = LimitTest.Above, ["at most"] = LimitTest.AtMost, ["less than"] = LimitTest.Below,
    };

    extension(LimitTest test)
    {
        /// <summary>Whether a figure passes.</summary>
        public bool Passes(decimal value, decimal limit) => test switch
        {
            LimitTest.AtLeast => value >= limit,
            LimitTest.Above => value > limit,
            LimitTest.AtMost => value <= limit,
            LimitTest.Below => value < limit,
            _ => false,
        };

        /// <summary>By how much a figure passes; negative where it fails by so much.</summary>
        public decimal Margin(decimal value, decimal limit) => test.IsUpper ? limit - value : value - limit;

        /// <summary>Whether the limit bounds a figure from above.</summary>
        public bool IsUpper => test is LimitTest.AtMost or LimitTest.Below;

        /// <summary>The test in words: <c>at least</c>.</summary>
        public string InWords => Words.FirstOrDefault(each => each.Value == test).Key ?? "not listed";
    }
}
