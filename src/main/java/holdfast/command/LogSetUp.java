package holdfast.command;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.filter.ThresholdFilter;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ConfiguratorRank;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.Appender;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.rolling.FixedWindowRollingPolicy;
import ch.qos.logback.core.rolling.RollingFileAppender;
import ch.qos.logback.core.rolling.SizeBasedTriggeringPolicy;
import ch.qos.logback.core.spi.ContextAwareBase;
import ch.qos.logback.core.util.FileSize;
import holdfast.book.UserFolder;

/**
 * The log: the file gets everything worth knowing afterwards, the console only what the user must
 * know now. Said in Java, since the reader of XML would take a third of the time in which a short
 * command starts; Logback finds it as a service.
 */
@ConfiguratorRank(ConfiguratorRank.CUSTOM_HIGH_PRIORITY)
public final class LogSetUp extends ContextAwareBase implements Configurator {

  private static final int OLD_FILES = 3;
  private static final long LARGEST_FILE = 2L << 20;

  @Override
  public ExecutionStatus configure(LoggerContext log) {
    Logger root = log.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    root.setLevel(Level.INFO);
    root.addAppender(file(log));
    root.addAppender(console(log));
    // It complains of files in the system's own folder for them, which another program was quicker
    // to remove; what matters comes as an exception.
    log.getLogger("org.sqlite").setLevel(Level.OFF);
    return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
  }

  private static Appender<ILoggingEvent> file(LoggerContext log) {
    // Main sets this before the first log line: the user's data folder.
    String folder =
        System.getProperty(UserFolder.PROPERTY, System.getProperty("java.io.tmpdir") + "/holdfast");
    RollingFileAppender<ILoggingEvent> file = new RollingFileAppender<>();
    file.setContext(log);
    file.setName("file");
    file.setFile(folder + "/holdfast.log");
    file.setEncoder(
        encoder(log, "%d{yyyy-MM-dd HH:mm:ss.SSS} %-5level [%thread] %logger{20} - %msg%n"));
    FixedWindowRollingPolicy rolling = new FixedWindowRollingPolicy();
    rolling.setContext(log);
    rolling.setParent(file);
    rolling.setFileNamePattern(folder + "/holdfast.%i.log");
    rolling.setMinIndex(1);
    rolling.setMaxIndex(OLD_FILES);
    rolling.start();
    SizeBasedTriggeringPolicy<ILoggingEvent> size = new SizeBasedTriggeringPolicy<>();
    size.setContext(log);
    size.setMaxFileSize(new FileSize(LARGEST_FILE));
    size.start();
    file.setRollingPolicy(rolling);
    file.setTriggeringPolicy(size);
    file.start();
    return file;
  }

  private static Appender<ILoggingEvent> console(LoggerContext log) {
    ConsoleAppender<ILoggingEvent> console = new ConsoleAppender<>();
    console.setContext(log);
    console.setName("console");
    console.setTarget("System.err");
    console.setEncoder(encoder(log, "holdfast: %msg%n%nopex"));
    ThresholdFilter warnings = new ThresholdFilter();
    warnings.setContext(log);
    warnings.setLevel(Level.WARN.levelStr);
    warnings.start();
    console.addFilter(warnings);
    console.start();
    return console;
  }

  private static PatternLayoutEncoder encoder(LoggerContext log, String pattern) {
    PatternLayoutEncoder encoder = new PatternLayoutEncoder();
    encoder.setContext(log);
    encoder.setPattern(pattern);
    encoder.start();
    return encoder;
  }
}
