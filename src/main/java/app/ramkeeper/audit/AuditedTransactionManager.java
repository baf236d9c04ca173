package app.ramkeeper.audit;

import jakarta.persistence.EntityManagerFactory;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.springframework.jdbc.datasource.ConnectionHolder;
import org.springframework.orm.jpa.JpaTransactionManager;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Tells the database at the start of each writing transaction who acts, for the audit triggers.
 *
 * <p>The two settings live as long as the transaction, so a pooled connection never carries them on.
 */
class AuditedTransactionManager extends JpaTransactionManager {

    private final DataSource dataSource;

    AuditedTransactionManager(EntityManagerFactory factory, DataSource dataSource) {
        super(factory);
        this.dataSource = dataSource;
        setDataSource(dataSource);
    }

    @Override
    protected void doBegin(Object transaction, TransactionDefinition definition) {
        super.doBegin(transaction, definition);
        if (!definition.isReadOnly()) {
            try {
                tell(Actor.current());
            } catch (RuntimeException failure) {
                doCleanupAfterCompletion(transaction);
                throw failure;
            }
        }
    }

    private void tell(Actor actor) {
        ConnectionHolder holder = (ConnectionHolder) TransactionSynchronizationManager.getResource(dataSource);
        if (holder == null) {
            throw new CannotCreateTransactionException("The transaction has no JDBC connection to name its actor on");
        }
        Connection connection = holder.getConnection();
        try (PreparedStatement statement = connection.prepareStatement(
                "select set_config('ramkeeper.actor', ?, true), set_config('ramkeeper.source', ?, true)")) {
            statement.setString(1, actor.name());
            statement.setString(2, actor.source());
            statement.execute();
        } catch (SQLException failure) {
            throw new CannotCreateTransactionException("Could not name the actor of the transaction", failure);
        }
    }
}
