using System.Text.Json.Nodes;

namespace Tamis.Notebooks.Tests;

public class NotebookFormatTests
{
    private const string Older = """
        {"cells":[
          {"cell_type":"markdown","metadata":{},"source":["# Which version\n","and why"]},
          {"cell_type":"code","execution_count":7,"metadata":{},"outputs":[{"name":"stdout","output_type":"stream","text":["old"]}],"source":"1 + 1"}],
         "metadata":{"tamis":{"reader":"teacher"},"kernelspec":{"display_name":"Own","language":"C#","name":"own"}},"nbformat":4,"nbformat_minor":2}
        """;

    private static NotebookFile Load(string text)
    {
        using var scratch = new ScratchFolder();
        return NotebookFormat.Load(scratch.Write("01-chef.ipynb", text));
    }

    [Fact]
    public void Load_NotebookOfAnOlderMinorVersion_KeepsTextAndLeavesOutputs()
    {
        var notebook = Load(Older);
        Assert.Equal(("01-chef", "Which version", Reader.Teacher), (notebook.Name, notebook.Title, notebook.Reader));
        Assert.Equal(["# Which version\nand why", "1 + 1"], notebook.Cells.Select(cell => cell.Text));
        Assert.All(notebook.Cells, cell => Assert.Empty(cell.Outputs));
    }

    [Fact]
    public void ToText_LoadedAgain_IsTheSameText()
    {
        var text = NotebookFormat.ToText(Load(Older));
        Assert.Equal(text, NotebookFormat.ToText(Load(text)));
        Assert.Equal("own", (string?)JsonNode.Parse(text)!["metadata"]!["kernelspec"]!["name"]);
    }

    // nbformat 4.5: every cell has an id, code cells have outputs and execution_count, multi-line strings are lists of
    // lines that keep their LF (nbformat.readthedocs.io/en/latest/format_description.html).
    [Fact]
    public void ToText_Outputs_HaveTheShapeOfTheFormat()
    {
        var notebook = Load(Older);
        notebook = notebook with
        {
            Cells = [notebook.Cells[1] with
            {
                Number = 1,
                Outputs =
                [
                    new StreamOutput("stdout", "a\nb"),
                    new DisplayOutput([new("text/html", "<b>é</b>"), new("application/json", "{\"a\":1}")], IsResult: false),
                    new DisplayOutput([new("text/plain", "2")], IsResult: true),
                    new ErrorOutput(new(1, 2, "Error", "bad")),
                ],
            }],
        };
        var root = JsonNode.Parse(NotebookFormat.ToText(notebook))!;
        var cell = root["cells"]![0]!;
        Assert.Equal((4, 5), ((int)root["nbformat"]!, (int)root["nbformat_minor"]!));
        Assert.Equal("""["a\n","b"]""", cell["outputs"]![0]!["text"]!.ToJsonString());
        Assert.Equal("""{"a":1}""", cell["outputs"]![1]!["data"]!["application/json"]!.ToJsonString());
        Assert.Equal("execute_result", (string?)cell["outputs"]![2]!["output_type"]);
        Assert.Equal(1, (int)cell["outputs"]![2]!["execution_count"]!);
        Assert.Equal(["ename", "evalue", "output_type", "traceback"], cell["outputs"]![3]!.AsObject().Select(pair => pair.Key));
    }

    [Theory]
    [InlineData("{", "cannot be read as a notebook")]
    [InlineData("""{"nbformat":3,"worksheets":[]}""", "not a notebook of nbformat 4")]
    [InlineData("""{"nbformat":4,"cells":[{"cell_type":"chart","source":""}]}""", "found the type 'chart'")]
    public void Load_SomethingElse_SaysWhatItIsNot(string text, string sentence) =>
        Assert.Contains(sentence, Assert.Throws<FormatException>(() => Load(text)).Message, StringComparison.Ordinal);
}
