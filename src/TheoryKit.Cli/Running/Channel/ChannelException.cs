namespace TheoryKit.Cli.Running.Channel;

/// <summary>What came through a channel is no message, or a message is too long for it; the text says where and why.</summary>
internal sealed class ChannelException(string message) : Exception(message);
