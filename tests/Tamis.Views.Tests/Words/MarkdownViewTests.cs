namespace Tamis.Views.Tests.Words;

public class MarkdownViewTests
{
    private const string Sentence = "Run `paper FOLDER` for the *chef’s* sheets, [here](16.html) & now.";

    [Fact]
    public void RenderSentence_StandsWithinAParagraph() =>
        Assert.Equal("Run <code>paper FOLDER</code> for the <em>chef’s</em> sheets, <a href=\"16.html\">here</a> &amp; now.", MarkdownView.RenderSentence(Sentence).Markup);

    [Fact]
    public void ToText_HasNoMarks() => Assert.Equal("Run paper FOLDER for the chef’s sheets, here & now.", MarkdownView.ToText(Sentence));
}
