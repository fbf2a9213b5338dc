using Spectre.Console;
using TheoryKit.Cli.Notebooks;

namespace TheoryKit.Cli.Commands;

/// <summary>Tells which cell is being run.</summary>
internal abstract class PrintProgress
{
    /// <summary>A bar for each notebook on a terminal; plain lines where the output goes elsewhere.</summary>
    public static PrintProgress On(IAnsiConsole console) =>
        console.Profile.Capabilities.Interactive && console.Profile.Out.IsTerminal
            ? new Bars(console)
            : new Lines(console);

    /// <summary>
    /// Does <paramref name="work"/>, which reports each cell before it is run, and null when a notebook is done, from several
    /// notebooks at a time.
    /// </summary>
    public abstract Task RunAsync(IReadOnlyList<Notebook> notebooks, Func<Action<Notebook, CodeCell?>, Task> work);

    private static string About(Notebook notebook, CodeCell cell) =>
        $"{notebook.Name}: code {cell.Number} of {notebook.CodeCells.Count()}";

    private sealed class Lines(IAnsiConsole console) : PrintProgress
    {
        private readonly Lock writing = new();

        public override Task RunAsync(
            IReadOnlyList<Notebook> notebooks,
            Func<Action<Notebook, CodeCell?>, Task> work
        ) =>
            work(
                (notebook, cell) =>
                {
                    if (cell is not null)
                    {
                        lock (writing)
                        {
                            console.Profile.Out.Writer.WriteLine(About(notebook, cell));
                        }
                    }
                }
            );
    }

    private sealed class Bars(IAnsiConsole console) : PrintProgress
    {
        public override Task RunAsync(
            IReadOnlyList<Notebook> notebooks,
            Func<Action<Notebook, CodeCell?>, Task> work
        ) =>
            console
                .Progress()
                .Columns(
                    new TaskDescriptionColumn { Alignment = Justify.Left },
                    new ProgressBarColumn(),
                    new ElapsedTimeColumn()
                )
                .StartAsync(context =>
                {
                    var tasks = notebooks.ToDictionary(
                        static notebook => notebook,
                        notebook =>
                            context.AddTask(
                                Markup.Escape(notebook.Name),
                                autoStart: false,
                                maxValue: Math.Max(1, notebook.CodeCells.Count())
                            )
                    );
                    return work(
                        (notebook, cell) =>
                        {
                            var task = tasks[notebook];
                            if (!task.IsStarted)
                            {
                                task.StartTask();
                            }

                            task.Description = Markup.Escape(cell is null ? notebook.Name : About(notebook, cell));
                            task.Value = cell is null ? task.MaxValue : cell.Number - 1;
                        }
                    );
                });
    }
}
