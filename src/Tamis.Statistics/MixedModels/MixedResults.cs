namespace Tamis.Statistics.MixedModels;

/// <summary>A fixed effect.</summary>
/// <param name="Name">The column's name, a factor's name followed by its level, or <c>(Intercept)</c>.</param>
/// <param name="Estimate">The estimate with Satterthwaite's degrees of freedom; null where earlier effects hold this one already.</param>
public sealed record FixedEffect(string Name, Models.Estimate? Estimate);

/// <summary>How much an effect varies from level to level.</summary>
/// <param name="Group">The grouping, <c>recipe:replicate</c>.</param>
/// <param name="Effect"><c>(Intercept)</c>, or the column whose slope varies.</param>
/// <param name="LevelCount">How many levels there are.</param>
/// <param name="Variance">The variance, in the squared unit of the response over that of the column; 0 where the data show none.</param>
public sealed record VarianceComponent(string Group, string Effect, int LevelCount, double Variance)
{
    /// <summary>Its square root.</summary>
    public double StandardDeviation => Math.Sqrt(Variance);
}

/// <summary>The test of a fixed term by F with Satterthwaite's degrees of freedom, averaged over the levels of all other factors (type 3).</summary>
/// <param name="Term">The term as in the expanded model.</param>
/// <param name="NumeratorDegrees">How many independent contrasts are tested.</param>
/// <param name="DenominatorDegrees">Degrees of freedom of their error.</param>
/// <param name="F">The mean square of the contrasts over their error.</param>
/// <param name="P">The probability of a larger F if the term did nothing.</param>
public sealed record FixedTest(string Term, int NumeratorDegrees, double DenominatorDegrees, double F, double P);

/// <summary>The comparison of two models, one of which is a part of the other, by twice the difference of their log likelihoods.</summary>
/// <param name="ChiSquare">Twice the difference, 0 or more.</param>
/// <param name="Degrees">How many parameters the larger model has more.</param>
/// <param name="P">
/// The probability of a larger value of χ² with these degrees of freedom. Where a variance is tested it is on the safe side, up to twice too
/// large, since a variance cannot fall below nil (Self and Liang 1987, Journal of the American Statistical Association 82).
/// </param>
public sealed record LikelihoodRatio(double ChiSquare, int Degrees, double P);

/// <summary>What a level of a grouping is predicted to add.</summary>
/// <param name="Level">The level; levels of several factors are parted by a colon.</param>
/// <param name="Effect"><c>(Intercept)</c>, or the column whose slope varies.</param>
/// <param name="Value">The prediction, drawn towards nil the less the level was seen (best linear unbiased prediction).</param>
public sealed record RandomEffect(string Level, string Effect, double Value);
