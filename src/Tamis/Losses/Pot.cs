namespace Tamis.Losses;

/// <summary>What is in a component while it is made: the content of each line, apart, so that a loss can be taken from one.</summary>
internal sealed class Pot
{
    private readonly List<(string Line, Mixture Content)> _content = [];
    private double _evaporatedGrams;

    public Mixture Content => Mixture.Of([.. _content.Select(each => each.Content), new Mixture { EvaporatedGrams = _evaporatedGrams }]);

    public double Grams => _content.Sum(each => each.Content.FinishedGrams) - _evaporatedGrams;

    public double GramsOf(string line) => _content.Where(each => Names.Same(each.Line, line)).Sum(each => each.Content.FinishedGrams);

    public void Add(string line, Mixture content) => _content.Add((line, content));

    /// <summary>Takes water from the whole, or from one line.</summary>
    public void Evaporate(double grams, string? of)
    {
        if (of is null)
        {
            _evaporatedGrams += grams;
            return;
        }
        var there = GramsOf(of);
        if (there > 0) Change(of, content => WithLessWater(content, grams * content.FinishedGrams / there));
    }

    /// <summary>Takes a share of the whole, or of one line, as it stands.</summary>
    public void Remove(double share, string? of)
    {
        if (of is null) _evaporatedGrams *= 1 - share;
        Change(of, content => share >= 1 ? new Mixture() : content.Scaled(1 - share));
    }

    private void Change(string? of, Func<Mixture, Mixture> change)
    {
        for (var i = 0; i < _content.Count; i++)
            if (of is null || Names.Same(_content[i].Line, of)) _content[i] = (_content[i].Line, change(_content[i].Content));
    }

    private static Mixture WithLessWater(Mixture content, double grams) => content.Parts is [var only] && content.EvaporatedGrams == 0
        ? content with { Parts = [only with { WaterLostGrams = only.WaterLostGrams + grams }] }
        : content with { EvaporatedGrams = content.EvaporatedGrams + grams };
}
