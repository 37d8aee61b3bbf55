using Tamis.Statistics.Comparisons;

namespace Tamis.Statistics.Designs;

/// <summary>A design in which blocks (people) get some or all of the treatments, each as often as every other: what it will be able to show.</summary>
/// <param name="Blocks">How many blocks, 2 or more.</param>
/// <param name="Treatments">How many treatments, 2 or more.</param>
/// <param name="Each">How many different treatments a block gets, from 2 to all.</param>
/// <param name="Times">How many times a block gets each of its treatments, 1 or more.</param>
/// <remarks>
/// The model is value = treatment + block + block within treatment + error, blocks as a sample. In complete blocks figures are exact; in
/// incomplete ones they are those of balanced incomplete blocks (Yates 1936, Annals of Eugenics 7) by what is seen within blocks alone.
/// </remarks>
public sealed record CrossedDesign(int Blocks, int Treatments, int Each, int Times = 1)
{
    /// <summary>In how many blocks each treatment is.</summary>
    public double Repeats => (double)Blocks * Each / Treatments;

    /// <summary>What a block is worth for a difference beside a complete one, above 0 to 1: pairs of treatments that share a block.</summary>
    public double Efficiency => (double)Treatments * (Each - 1) / (Each * (Treatments - 1.0));

    /// <summary>Degrees of freedom of the error of a difference; 0 or less where nothing is left to judge by.</summary>
    public int Degrees => Blocks * (Each - 1) - (Treatments - 1);

    /// <summary>The standard error of the difference of two treatments.</summary>
    /// <param name="errorDeviation">The standard deviation within a block and treatment.</param>
    /// <param name="blockInTreatmentDeviation">The standard deviation of what a block finds in single treatments and finds again; 0 where it is in the error.</param>
    public double StandardError(double errorDeviation, double blockInTreatmentDeviation = 0) =>
        Math.Sqrt(2 * (blockInTreatmentDeviation * blockInTreatmentDeviation + errorDeviation * errorDeviation / Times) / (Repeats * Efficiency));

    /// <summary>The chance that two treatments which lie so far apart are told apart, all pairs counted together, 0 to 1; 0 without degrees of freedom.</summary>
    /// <param name="difference">How far they lie apart.</param>
    /// <param name="errorDeviation">The standard deviation within a block and treatment, more than 0.</param>
    /// <param name="blockInTreatmentDeviation">See <see cref="StandardError"/>.</param>
    /// <param name="confidence">The confidence of the intervals for all pairs, above 0 and below 1.</param>
    /// <remarks>The square of a non-central t is a non-central F; the limit is that of the studentized range.</remarks>
    public double PowerOfPair(double difference, double errorDeviation, double blockInTreatmentDeviation = 0, double confidence = 0.95)
    {
        if (Degrees < 1) return 0;
        var limit = Treatments == 2 ? Tails.StudentTwoSided(confidence, Degrees) : StudentizedRange.Quantile(confidence, Treatments, Degrees) / Math.Sqrt(2);
        var away = difference / StandardError(errorDeviation, blockInTreatmentDeviation);
        return Tails.NoncentralFAbove(limit * limit, 1, Degrees, away * away);
    }

    /// <summary>The fewest blocks with which two treatments so far apart are told apart as often as wanted; null where more than <paramref name="most"/> would be needed.</summary>
    /// <param name="difference">How far they lie apart, more than 0.</param>
    /// <param name="errorDeviation">The standard deviation within a block and treatment, more than 0.</param>
    /// <param name="blockInTreatmentDeviation">See <see cref="StandardError"/>.</param>
    /// <param name="power">The wanted chance, above 0 and below 1.</param>
    /// <param name="confidence">The confidence of the intervals for all pairs, above 0 and below 1.</param>
    /// <param name="most">Where the search ends.</param>
    /// <remarks><see cref="Blocks"/> has no part in it.</remarks>
    public int? BlocksNeeded(double difference, double errorDeviation, double blockInTreatmentDeviation, double power, double confidence = 0.95, int most = 10_000)
    {
        if (!(difference > 0)) throw new ArgumentOutOfRangeException(nameof(difference), difference, "The difference is more than zero.");
        if (!(errorDeviation > 0) || !double.IsFinite(errorDeviation)) throw new ArgumentOutOfRangeException(nameof(errorDeviation), errorDeviation, "The spread is more than zero.");
        // More blocks never show less: double until enough, then halve the gap.
        var (few, enough) = (1, 2);
        while (!Reaches(enough))
        {
            if (enough >= most) return null;
            (few, enough) = (enough, Math.Min(most, enough * 2));
        }
        while (enough - few > 1)
            if ((few + enough) / 2 is var middle && Reaches(middle)) enough = middle;
            else few = middle;
        return enough;

        bool Reaches(int blocks) => (this with { Blocks = blocks }).PowerOfPair(difference, errorDeviation, blockInTreatmentDeviation, confidence) >= power;
    }
}
